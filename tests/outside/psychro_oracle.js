// Dew points and saturation pressures of another's making, for tst_psychrometrics: PsychroLib (MIT), the ASHRAE
// Fundamentals 2017 formulae. Prints "td t rh value" in C and "es t value" in Pa.
const p = require('psychrolib');
p.SetUnitSystem(p.SI);
for (let t = 0.5; t <= 50; t += 0.5) {
    console.log('es', t, p.GetSatVapPres(t));
    for (let rh = 5; rh <= 100; rh += 5)
        console.log('td', t, rh, p.GetTDewPointFromRelHum(t, rh / 100));
}
