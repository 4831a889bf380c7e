//! The help of every command, in the language of the start.

use super::args::Arguments;
use crate::text::{Language, Words};
use clap::{Command, CommandFactory};
use std::ffi::OsString;

/// The commands that have a help of their own.
const COMMANDS: [&str; 4] = ["practice", "solve", "diagnose", "check"];

/// The language that the arguments ask for, before they are read in full: help is told in it.
pub(super) fn asked(arguments: &[OsString]) -> Option<Language> {
    let texts: Vec<&str> = (arguments.iter().filter_map(|one| one.to_str())).collect();
    let mut asked = None;
    for (place, text) in texts.iter().enumerate() {
        let named = match text.strip_prefix("--language") {
            Some("") => texts.get(place + 1).copied(),
            Some(rest) => rest.strip_prefix('='),
            None => None,
        };
        asked = asked.or_else(|| named.and_then(Language::of_locale));
    }
    asked
}

/// The command line with its help in these words.
pub(super) fn command(words: &Words) -> Command {
    let mut command = Arguments::command();
    // What stands in the program itself is English.
    if words.language() == Language::default() {
        return command;
    }
    command.build();
    // Headings live as long as the program: clap takes no others.
    let heading = |key: &str| -> &'static str { words.word(key).leak() };
    let headings = [
        heading("help.arguments"),
        heading("help.options"),
        heading("help.page.commands"),
    ];
    let mut command = told(command, "all", headings, words);
    for name in COMMANDS {
        command = command.mut_subcommand(name, |one| told(one, name, headings, words));
    }
    let about = words.word("help.command.help");
    command.mut_subcommand("help", |one| one.about(about))
}

/// A command with its help in these words; `name` is that of the command, or `all`.
fn told(command: Command, name: &str, headings: [&'static str; 3], words: &Words) -> Command {
    let [arguments, options, commands] = headings;
    let template = format!(
        "{{about-with-newline}}\n{} {{usage}}\n\n{{all-args}}{{after-help}}",
        words.word("help.usage")
    );
    command
        .about(words.word(&format!("help.command.{name}")))
        .after_help(words.word(&format!("help.after.{name}")))
        .subcommand_help_heading(commands)
        .help_template(template)
        .mut_args(|one| {
            let key = key(name, one.get_id().as_str());
            let heading = match one.is_positional() {
                true => arguments,
                false => options,
            };
            // What may be chosen stands in the sentence.
            let one = one.hide_possible_values(true);
            match words.has(&key) {
                // That of `help` has a longer form of its own.
                true => one
                    .help(words.word(&key))
                    .long_help(words.word(&key))
                    .help_heading(heading),
                false => one.help_heading(heading),
            }
        })
}

/// The key of what an argument means: the same words serve wherever it means the same.
fn key(name: &str, id: &str) -> String {
    match (name, id) {
        ("practice", "problem" | "seed") | ("all", "seed") => format!("help.practice.{id}"),
        ("solve", "json") => "help.solve.json".to_owned(),
        _ => format!("help.argument.{id}"),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    /// The help of a command and of every command in it, with its argument's names.
    fn all(mut command: Command) -> Vec<(String, String)> {
        command.build();
        let mut found = vec![("all".to_owned(), command.render_long_help().to_string())];
        for name in COMMANDS {
            let one = command.find_subcommand_mut(name).unwrap();
            found.push((name.to_owned(), one.render_long_help().to_string()));
        }
        found
    }

    /// The English catalogue has the words that stand beside the arguments, so whoever translates
    /// sees what is told.
    #[test]
    fn the_english_words_of_the_help_are_those_of_the_arguments() {
        let words = Words::english();
        let bare = |text: &str| text.replace('`', "");
        let plain = |text: &str| bare(text).split_whitespace().collect::<Vec<_>>().join(" ");
        let mut command = Arguments::command();
        command.build();
        let mut looked_at = 0;
        let mut look = |name: &str, one: &Command| {
            let about = one.get_about().unwrap().to_string();
            let after = one.get_after_help().unwrap().to_string();
            assert_eq!(
                plain(&words.word(&format!("help.command.{name}"))),
                plain(&about)
            );
            assert_eq!(
                bare(&words.word(&format!("help.after.{name}"))),
                bare(&after)
            );
            for argument in one.get_arguments() {
                let key = key(name, argument.get_id().as_str());
                let help = argument.get_help().unwrap().to_string();
                // Of `help` the end tells where there is more.
                let told = plain(&help);
                let told = told.split(" (see ").next().unwrap();
                assert_eq!(plain(&words.word(&key)), told, "{key}");
                looked_at += 1;
            }
        };
        look("all", &command);
        for name in COMMANDS {
            look(name, command.find_subcommand(name).unwrap());
        }
        assert!(looked_at > 30, "{looked_at}");
    }

    /// Every language tells the same arguments, and nothing of another language.
    #[test]
    fn the_help_of_every_language_is_whole() {
        let english = all(command(&Words::english()));
        for language in Language::all().skip(1) {
            let own = all(command(&Words::of(language)));
            for ((name, told), (_, like)) in own.iter().zip(&english) {
                let names = |text: &str| {
                    let words = text.split_whitespace();
                    let options: std::collections::BTreeSet<String> = words
                        .filter(|word| word.starts_with("--"))
                        .map(|word| {
                            word.trim_end_matches([',', ')', '.', ']', ';', '`'])
                                .to_owned()
                        })
                        .collect();
                    options
                };
                assert_eq!(names(told), names(like), "{name}");
                for english in ["Usage:", "Options:", "Commands:", "Arguments:", "Print "] {
                    assert!(!told.contains(english), "{told}");
                }
            }
        }
    }

    #[test]
    fn the_language_is_known_before_the_arguments_are_read() {
        let asked = |line: &str| asked(&line.split(' ').map(OsString::from).collect::<Vec<_>>());
        assert_eq!(asked("leverwright --help"), None);
        assert_eq!(
            asked("leverwright --language de --help"),
            Language::tagged("de")
        );
        assert_eq!(
            asked("leverwright solve --language=de"),
            Language::tagged("de")
        );
        assert_eq!(asked("leverwright --language"), None);
    }
}
