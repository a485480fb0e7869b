import QtQuick
import QtTest
import Gluewright.Backend
import Gluewright.Ui

// Mixing a pot under the thumb, noting what happens to it, and taking the whole back.
Item {
    id: root

    height: 800
    width: 1172

    SignalSpy {
        id: said
        signalName: "said"
        target: AppServices
    }

    ScreenCase {
        id: test

        name: "Pots"
        screen: PotsScreen {}

        function undoLast() {
            const key = said.signalArguments[said.count - 1][1];
            const before = said.count;
            AppServices.undo(key);
            tryVerify(() => said.count > before, test.patience);
        }

        function mixed(): Item {
            test.press(test.waitFor(() => test.named("mixButton"), "the button"));
            const recipe = test.waitFor(() => test.named("mixRecipe"), "the recipes");
            tryVerify(() => recipe.options.length > 4, test.patience);
            recipe.picked(recipe.options.indexOf("Hot hide glue"));
            const need = test.waitFor(() => test.named("mixNeed"), "the amount");
            need.edited("50");
            const button = test.waitFor(() => test.named("mixedIt"), "the button at the foot");
            tryVerify(() => button.enabled, test.patience);
            verify(test.says("17.9") !== null, "what to weigh");
            said.clear();
            test.press(button);
            tryVerify(() => said.count === 1, test.patience);
            return test.waitFor(() => test.says("Soaking"), "the pot");
        }

        function test_empty_asksForAMix() {
            test.show(1172, 800);
            verify(test.waitFor(() => test.named("noPots"), "nothing is mixed"));
        }

        function test_aPot_isMixed_heated_andUndone_data() {
            return [{ tag: "landscape", width: 1172, height: 800 }, { tag: "portrait", width: 800, height: 1164 }];
        }

        function test_aPot_isMixed_heated_andUndone(row) {
            test.show(row.width, row.height);
            test.mixed();
            test.nothingStandsOut();
            test.press(test.waitFor(() => test.named("act_heat_on"), "on the heat"));
            test.waitFor(() => test.named("potDegrees"), "the thermometer");
            test.press(test.named("noteIt"));
            tryVerify(() => said.count === 2, test.patience);
            test.waitFor(() => test.says("On the heat for"), "it is hot");
            test.waitFor(() => test.named("act_chilled"), "what may come next");
            test.nothingStandsOut();
            test.undoLast();
            test.waitFor(() => test.says("Soaking"), "off the heat again");
            AppServices.undo(said.signalArguments[0][1]);
            verify(test.waitFor(() => test.named("noPots"), "nothing is mixed"));
        }
    }
}
