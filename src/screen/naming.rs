//! Who is at work: the line in which a name is typed, and what becomes of it.

use super::keys::Command;
use super::message::Effect;
use super::model::{Model, Over, Page};
use super::{editing, update};
use crate::text::{Prose, Words};
use tui_input::Input;

/// The most characters that are taken: more than a name may have, so that it can be told so.
const LONGEST: usize = 120;

/// Signs that stand in lines of working and in no name.
const NO_NAME: [char; 12] = ['=', ',', ';', '*', '/', '+', '^', '(', ')', '°', '<', '>'];

/// Asks who is at work.
pub(super) fn ask(model: &mut Model) {
    model.name_typed = Input::default();
    model.over = Over::Naming;
}

/// A key while the name is asked.
pub(super) fn pressed(model: &mut Model, command: Command) -> Option<Effect> {
    match command {
        Command::Enter => return entered(model),
        Command::Leave | Command::Name => {
            model.over = Over::Nothing;
            return Some(Effect::Call(String::new()));
        }
        _ => {
            if let Some(request) = editing::request(command) {
                model.name_typed.handle(request);
            }
        }
    }
    None
}

/// Puts characters into the name.
pub(super) fn insert(model: &mut Model, text: &str) {
    model.name_typed = editing::inserted(&model.name_typed, text, LONGEST).0;
}

/// What the desk says to the name. One that cannot be taken is asked for again.
pub(super) fn called(model: &mut Model, said: Result<Prose, Prose>) {
    match said {
        Ok(said) => {
            if !said.is_empty() {
                model.notes = vec![said];
            }
        }
        Err(trouble) => {
            model.notes = vec![trouble];
            model.over = Over::Naming;
        }
    }
}

fn entered(model: &mut Model) -> Option<Effect> {
    let typed = model.name_typed.value().trim().to_owned();
    model.over = Over::Nothing;
    if let Page::Working(working) = &mut model.page {
        // Who types on without reading has typed an answer, and it is taken as one.
        if is_line(&model.words, &typed) {
            working.set_line(typed);
            return update::enter(model);
        }
    }
    let nobody = is_one_of(&model.words, &["command.done", "command.skip"], &typed);
    Some(Effect::Call(if nobody { String::new() } else { typed }))
}

/// True for what is a line of working or an order, and no name.
fn is_line(words: &Words, typed: &str) -> bool {
    let orders = [
        "command.help",
        "command.hint",
        "command.why",
        "command.show",
        "command.back",
        "command.quit",
    ];
    let digits = typed.chars().filter(char::is_ascii_digit).count();
    typed.contains(NO_NAME)
        || digits > 0 && digits < typed.chars().count()
        || is_one_of(words, &orders, typed)
}

/// True for the words that the catalogue lists under one of these keys.
fn is_one_of(words: &Words, keys: &[&str], typed: &str) -> bool {
    let typed = typed.to_lowercase();
    keys.iter().any(|key| {
        let list = words.word(key);
        list.split(',').any(|word| word.trim() == typed)
    })
}
