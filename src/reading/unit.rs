//! Units as learners type them after a number.

use super::said::said;
use super::signs::{continues_word, is_blank, is_times};
use crate::units::{Unit, find_unit};

/// Spellings that are common on keyboards though the SI does not allow them.
const LENIENT: &[(&str, &str)] = &[
    ("newtonmetre", "N m"),
    ("newtonmetres", "N m"),
    ("newtonmeter", "N m"),
    ("newtonmeters", "N m"),
    ("newton metre", "N m"),
    ("newton metres", "N m"),
    ("newton meter", "N m"),
    ("newton meters", "N m"),
    ("newton-metres", "N m"),
    ("newton-meters", "N m"),
    ("newton", "N"),
    ("newtons", "N"),
    ("n", "N"),
    ("kn", "kN"),
    ("nm", "N m"),
    ("n m", "N m"),
    ("n·m", "N m"),
    ("m n", "N m"),
    ("m·n", "N m"),
    ("n.m", "N m"),
    ("knm", "kN m"),
    ("kn m", "kN m"),
    ("kg", "kg"),
    ("kgs", "kg"),
    ("kilograms", "kg"),
    ("mtr", "m"),
    ("mtrs", "m"),
    ("metres", "m"),
    ("meters", "m"),
    ("cm", "cm"),
    ("deg", "°"),
    ("degs", "°"),
    ("degree", "°"),
    ("degrees", "°"),
    ("rad", "rad"),
    ("rads", "rad"),
    ("radians", "rad"),
    ("m/s/s", "m/s²"),
    ("m·s⁻²", "m/s²"),
    ("m·s^-2", "m/s²"),
    ("m/s^2", "m/s²"),
    ("m/s2", "m/s²"),
];

/// More characters than any unit has.
const LONGEST: usize = 18;

/// The longest unit at the start of `text` that `allowed` lets through, with the bytes it takes.
pub(super) fn unit_at(
    text: &str,
    allowed: &mut dyn FnMut(&str, &'static Unit) -> bool,
) -> Option<(&'static Unit, usize)> {
    let ends: Vec<usize> = text
        .char_indices()
        .take(LONGEST)
        .map(|(at, c)| at + c.len_utf8())
        .collect();
    ends.into_iter().rev().find_map(|end| {
        let spelling = &text[..end];
        let last = spelling.chars().next_back()?;
        let next = text[end..].chars().next();
        if is_blank(last) || (continues_word(last) && next.is_some_and(continues_word)) {
            return None;
        }
        let unit = find(spelling)?;
        allowed(spelling, unit).then_some((unit, end))
    })
}

fn find(spelling: &str) -> Option<&'static Unit> {
    let mut plain = String::new();
    for c in spelling.chars() {
        match c {
            c if is_blank(c) => {
                if !plain.ends_with(' ') {
                    plain.push(' ');
                }
            }
            c if is_times(c) => {
                if plain.ends_with(' ') {
                    plain.pop();
                }
                plain.push('·');
            }
            c => plain.push(c),
        }
    }
    let plain = plain.replace("· ", "·");
    find_unit(&plain).or_else(|| {
        let small = plain.to_lowercase();
        let lenient = LENIENT.iter().find(|(spelling, _)| *spelling == small);
        find_unit(lenient.map_or_else(|| said().unit(&small), |(_, symbol)| Some(*symbol))?)
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn the_longest_unit_is_taken() {
        for (text, symbol, rest) in [
            ("N m", "N m", ""),
            ("Nm)", "N m", ")"),
            ("N · m", "N m", ""),
            ("N*mg", "N", "*mg"),
            ("newtons", "N", ""),
            ("KG", "kg", ""),
            ("°)", "°", ")"),
            ("m/s^2 * 3", "m/s²", " * 3"),
            ("m*3", "m", "*3"),
        ] {
            let (unit, length) = unit_at(text, &mut |_, _| true).unwrap();
            assert_eq!((unit.symbol, &text[length..]), (symbol, rest), "{text}");
        }
        assert!(unit_at("mg", &mut |_, _| true).is_none());
    }
}
