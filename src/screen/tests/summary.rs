//! The end of a real problem: how it went, what to do next, and the key two ways.

use super::at_lessons::at_mast;
use super::looks::told;
use super::stand_ins::open;
use crate::screen::keys::Command;
use crate::screen::message::Message;
use crate::screen::model::Model;
use crate::screen::update;

/// Right and wrong lines, steps passed over and shown: as much to tell as there may be.
fn at_the_end(size: (u16, u16), unicode: bool) -> Model {
    let mut lines = vec!["skip", "hinge", "63*1", "63*9.8 N", "71*9.8 kg", "skip"];
    lines.extend(["123", "go on", "55", "25", "65", "617*cos 25"]);
    lines.extend(["skip"; 14]);
    at_mast(size, unicode, &lines)
}

#[test]
fn what_to_do_next_is_in_sight_above_the_key() {
    for size in [(60, 16), (80, 24), (100, 30), (140, 45)] {
        let mut model = at_the_end(size, true);
        assert!(open(&mut model).finished());
        let shown = told(&model);
        let next = shown.find("→ Next:").unwrap_or_else(|| panic!("{shown}"));
        let key = shown.find("The whole working").unwrap_or(usize::MAX);
        assert!(next < key, "{shown}");
        assert!(shown.contains("How it went"), "{shown}");
        assert!(shown.contains("F6"), "{shown}");
    }
    insta::assert_snapshot!("summary_80x24", told(&at_the_end((80, 24), true)));
    insta::assert_snapshot!("summary_120x45", told(&at_the_end((120, 45), true)));
}

#[test]
fn one_key_exchanges_the_ways_of_the_whole_working() {
    let press = |model: &mut Model, command| {
        update(model, Message::Pressed(command));
    };
    for size in [(60, 16), (80, 24), (100, 30)] {
        let mut model = at_the_end(size, true);
        press(&mut model, Command::Other);
        let shown = told(&model);
        assert!(shown.contains("The same another way"), "{shown}");

        press(&mut model, Command::Other);
        assert!(told(&model).contains("The whole working your way"));
    }
    let mut model = at_the_end((80, 24), false);
    press(&mut model, Command::Other);
    insta::assert_snapshot!("other_way_ascii_80x24", told(&model));
    // Before the end there is nothing to exchange.
    let mut model = at_mast((80, 24), true, &["skip"]);
    let before = told(&model);
    press(&mut model, Command::Other);
    assert_eq!(told(&model), before);
}
