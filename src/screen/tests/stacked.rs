//! The reading of the line being typed, with its fractions stacked where that has room.

use super::at_lessons::at_mast;
use super::looks::told;
use crate::screen::message::Message;
use crate::screen::model::{Model, Pane};

/// The pull, in one fraction of three rows.
const PULL: &str = "T = (617.4*2.7*cos 55 + 695.8*4.5*cos 55)/(4.2*sin 65)";
/// A fraction within another: five rows.
const NESTED: &str = "T = (Wb*(L/2)*cos 55 + W1*d1*cos 55)/(dT*sin 65)";
/// Bars of both.
const BARS: [&str; 2] = ["─────────────── ", "───────────────\n"];

fn typing(size: (u16, u16), unicode: bool, before: &[&str], line: &str) -> Model {
    let mut model = at_mast(size, unicode, before);
    for c in line.chars() {
        crate::screen::update(&mut model, Message::Typed(c));
    }
    model
}

/// The rows down to the line being typed.
fn down_to_input(shown: &str) -> Vec<&str> {
    let is_input = |row: &&str| row.trim_start().starts_with('›') && row.contains("T = ");
    let at = shown.lines().position(|row| is_input(&row));
    shown.lines().take(at.unwrap()).collect()
}

fn is_stacked(shown: &str) -> bool {
    let input = down_to_input(shown).len();
    let below: Vec<String> = shown
        .lines()
        .skip(input)
        .map(|row| format!("{row}\n"))
        .collect();
    BARS.iter().any(|bar| below.concat().contains(bar))
}

#[test]
fn a_fraction_is_stacked_as_it_is_typed() {
    for (columns, rows) in [(80, 24), (100, 30), (140, 45)] {
        let model = typing((columns, rows), true, &["freely", "Wb = 63*9.8"], PULL);
        let shown = told(&model);
        assert!(is_stacked(&shown), "{shown}");
        insta::assert_snapshot!(format!("stacked_{columns}x{rows}"), shown);
    }
    let model = typing((80, 24), false, &["freely", "Wb = 63*9.8"], PULL);
    insta::assert_snapshot!("stacked_ascii_80x24", told(&model));
    let model = typing((100, 30), true, &["freely", "Wb = 63*9.8"], NESTED);
    insta::assert_snapshot!("stacked_nested_100x30", told(&model));
}

/// On a high screen there are rows for a fraction below the line: nothing above it moves.
#[test]
fn nothing_above_the_line_moves_on_a_high_screen() {
    for size in [(100, 30), (120, 40), (140, 45)] {
        let before = ["freely", "Wb = 63*9.8"];
        let flat = told(&typing(size, true, &before, "T = 617.4"));
        let high = told(&typing(size, true, &before, PULL));
        assert!(is_stacked(&high) && !is_stacked(&flat), "{high}");
        assert_eq!(down_to_input(&flat), down_to_input(&high), "{size:?}");
    }
}

/// Where the rows are needed for what is told, the reading stands in one row.
#[test]
fn what_is_told_keeps_its_rows() {
    let long = ["freely", "T = 617.4*2.7*sin 55/(4.2*sin 65)", "hint"];
    let cases: [(&[&str], (u16, u16), bool); 9] = [
        // The statement in full, a long answer, and a small screen.
        (&["freely"], (72, 20), false),
        (&["freely", "help"], (80, 24), false),
        (&["freely", "Wb = 63*9.8"], (60, 16), false),
        (&["freely"], (80, 24), true),
        (&["freely"], (100, 30), true),
        (&["freely", "Wb = 63*9.8"], (72, 20), true),
        (&["freely", "Wb = 63*9.8"], (80, 24), true),
        (&long, (100, 30), true),
        (&long, (140, 45), true),
    ];
    for (before, size, expected) in cases {
        for pane in [Pane::Diagram, Pane::Working] {
            let mut flat = typing(size, true, before, "T = 617.4");
            let mut high = typing(size, true, before, PULL);
            for model in [&mut flat, &mut high] {
                super::stand_ins::open(model).pane = pane;
            }
            let (flat, high) = (told(&flat), told(&high));
            if pane == Pane::Diagram {
                assert_eq!(is_stacked(&high), expected, "{before:?} {size:?}\n{high}");
            }
            assert!(high.contains("read as T = ") || is_stacked(&high), "{high}");
            let last = before[before.len() - 1];
            for kept in ["Still to be found", last] {
                assert_eq!(flat.contains(kept), high.contains(kept), "{kept}\n{high}");
            }
        }
    }
}
