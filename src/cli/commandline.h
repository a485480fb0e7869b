#pragma once

#include <string>

namespace gw {

/// True when the arguments ask for an answer in the terminal: a command, or help, or the version. Without one
/// the window opens.
bool isCommand(int argc, char** argv);

/// Answers in the terminal. Exit: 0 an answer was given, 1 it could not be (one sentence on stderr), 2 wrong
/// usage.
int runCommand(int argc, char** argv);

/// The main job in the terminal, for a machine without a display: today's shelf, a check, the order list, and
/// how to open the window. Exit as runCommand().
int runWithoutDisplay(const std::string& where);

/// The store the program uses when none is named: one file in the person's data folder.
std::string defaultStore();

} // namespace gw
