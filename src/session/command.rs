//! Words that steer: always understood, at every question.

use crate::judge::statement::one_letter_off;
use crate::text::Words;

/// What a learner wants other than an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Command {
    /// How to type things.
    Help,
    /// The next hint.
    Hint,
    /// The line itself.
    Show,
    /// The next question.
    Skip,
    /// Take the last line back.
    Back,
    /// Go on with the line as it is.
    GoOn,
    /// "I think I am right".
    Dispute,
    /// All forces are named.
    Done,
    /// Lines in any order, and no step asked.
    Freely,
    /// One step asked after another.
    Guided,
    /// Estimates before the numbers.
    Estimate,
    /// Leave.
    Quit,
}

/// Every command and the key of its words.
const COMMANDS: &[(Command, &str)] = &[
    (Command::Help, "command.help"),
    (Command::Hint, "command.hint"),
    (Command::Show, "command.show"),
    (Command::Skip, "command.skip"),
    (Command::Back, "command.back"),
    (Command::GoOn, "command.go-on"),
    (Command::Dispute, "command.dispute"),
    (Command::Done, "command.done"),
    (Command::Freely, "command.freely"),
    (Command::Guided, "command.guided"),
    (Command::Estimate, "command.estimate"),
    (Command::Quit, "command.quit"),
];

/// The command that a line is, if it is one.
pub(super) fn command(words: &Words, line: &str) -> Option<Command> {
    let plain: String = line
        .trim()
        .trim_matches(|c: char| matches!(c, '.' | '!' | ',' | '"' | ':' | '/'))
        .to_lowercase()
        .replace(['\u{2019}', '\''], "");
    let plain = plain.split_whitespace().collect::<Vec<_>>().join(" ");
    let plain = if plain.chars().all(|c| c == '?') && !plain.is_empty() {
        "?"
    } else {
        plain.trim_end_matches('?').trim_end()
    };
    COMMANDS
        .iter()
        .find(|(_, key)| {
            words
                .word(key)
                .split(',')
                .any(|word| word.trim() == plain && !plain.is_empty())
        })
        .map(|(command, _)| *command)
}

/// The command whose chief word a short line misses by one letter: "hnt".
pub(super) fn near_command(words: &Words, line: &str) -> Option<String> {
    let plain = line.trim().to_lowercase();
    if plain.chars().count() < 3 || plain.chars().any(|c| !c.is_alphabetic() && c != ' ') {
        return None;
    }
    COMMANDS.iter().find_map(|(_, key)| {
        let all = words.word(key);
        let chief = all.split(',').next()?.trim();
        one_letter_off(&plain, chief).then(|| chief.to_owned())
    })
}
