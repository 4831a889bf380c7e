//! Codes: a problem's numbers in a form short enough to copy off a sheet of paper.
//!
//! `mast-7K2QX-4F9CM` is the lesson, the number of the place in its grid, three signs of the
//! lesson's checksum and two that guard the code itself. The 32 signs leave out I, L, O and U.
//! Case does not count, O is read as 0, I and L as 1, and dashes or spaces after the lesson do
//! not count.

use crate::lesson::{GridPlace, Lesson};
use std::fmt;

/// The signs, in order of their worth.
const SIGNS: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
/// The largest prime below 32², the modulus of the guard.
const GUARD_PRIME: u32 = 1021;
/// A primitive root of [`GUARD_PRIME`], so that no two places of a code weigh the same.
const GUARD_ROOT: u32 = 10;
/// Signs of the lesson's checksum.
const LESSON_SIGNS: usize = 3;
/// Signs that guard the code.
const GUARD_SIGNS: usize = 2;

/// Why a code was refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CodeTrouble {
    /// No lesson of this name is here.
    UnknownLesson {
        /// The name as typed, lower case.
        name: String,
        /// The names of the lessons that are here.
        lessons: Vec<String>,
    },
    /// A sign is wrong, missing or too many.
    Mistyped,
    /// The code was made with another version of the lesson: its numbers have changed since.
    OtherVersion {
        /// The lesson's name.
        lesson: String,
    },
    /// The lesson has fewer problems than the code counts.
    OutOfGrid {
        /// The lesson's name.
        lesson: String,
    },
}

impl fmt::Display for CodeTrouble {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            CodeTrouble::UnknownLesson { name, lessons } => write!(
                formatter,
                "no lesson is called \"{name}\"; the lessons are {}",
                lessons.join(", ")
            ),
            CodeTrouble::Mistyped => write!(
                formatter,
                "this code has a sign wrong, missing or too many; compare it with the sheet, sign by sign"
            ),
            CodeTrouble::OtherVersion { lesson } => write!(
                formatter,
                "the lesson \"{lesson}\" has other numbers now than when this code was made; ask for a new code"
            ),
            CodeTrouble::OutOfGrid { lesson } => {
                write!(
                    formatter,
                    "the lesson \"{lesson}\" has no problem of this number"
                )
            }
        }
    }
}

/// The code of a place in a lesson's grid. A place outside the grid gets the code of no problem,
/// which [`parse_code`] refuses.
pub fn code(lesson: &Lesson, place: &GridPlace) -> String {
    let size = lesson.size();
    let number = lesson.grid().number(place).unwrap_or(size);
    let mut signs = base_32(number, width(size));
    let lesson_signs = lesson_signs(lesson);
    let guard = guard(
        lesson.id(),
        &[signs.as_str(), lesson_signs.as_str()].concat(),
    );
    signs.push('-');
    format!("{}-{signs}{lesson_signs}{guard}", lesson.id())
}

/// The lesson and the place that a code names: the lesson by its place in `lessons`.
///
/// # Errors
/// See [`CodeTrouble`]; its `Display` tells the learner what to do.
pub fn parse_code(typed: &str, lessons: &[Lesson]) -> Result<(usize, GridPlace), CodeTrouble> {
    let typed = typed.trim();
    let cut = typed.find(is_gap).unwrap_or(typed.len());
    let (name, rest) = typed.split_at(cut);
    let name = name.to_lowercase();
    let index = lessons
        .iter()
        .position(|lesson| lesson.id() == name)
        .ok_or_else(|| CodeTrouble::UnknownLesson {
            name: crate::text::printable(&name),
            lessons: lessons
                .iter()
                .map(|lesson| lesson.id().to_owned())
                .collect(),
        })?;
    let lesson = &lessons[index];
    let signs: String = rest
        .chars()
        .filter(|&sign| !is_gap(sign))
        .map(forgiven)
        .collect::<Option<String>>()
        .ok_or(CodeTrouble::Mistyped)?;
    // Every sign is ASCII here, so bytes and signs are the same.
    let number_signs = signs
        .len()
        .checked_sub(LESSON_SIGNS + GUARD_SIGNS)
        .filter(|signs| (1..=26).contains(signs))
        .ok_or(CodeTrouble::Mistyped)?;
    let (guarded, guard_signs) = signs.split_at(signs.len() - GUARD_SIGNS);
    if guard(lesson.id(), guarded) != guard_signs {
        return Err(CodeTrouble::Mistyped);
    }
    let (number, of_lesson) = guarded.split_at(number_signs);
    if of_lesson != lesson_signs(lesson) {
        return Err(CodeTrouble::OtherVersion { lesson: name });
    }
    let number = number.bytes().fold(0_u128, |number, sign| {
        number.saturating_mul(32).saturating_add(worth(sign).into())
    });
    let place = lesson.grid().place(number);
    place
        .map(|place| (index, place))
        .ok_or(CodeTrouble::OutOfGrid { lesson: name })
}

/// Signs that only part the groups.
fn is_gap(sign: char) -> bool {
    sign.is_whitespace() || matches!(sign, '-' | '_' | '\u{2010}'..='\u{2015}' | '\u{2212}')
}

/// The sign that was meant; `None` for one that no code has.
fn forgiven(sign: char) -> Option<char> {
    let sign = match sign.to_ascii_uppercase() {
        'O' => '0',
        'I' | 'L' => '1',
        sign => sign,
    };
    (sign.is_ascii() && SIGNS.contains(&(sign as u8))).then_some(sign)
}

fn worth(sign: u8) -> u32 {
    SIGNS.iter().position(|&known| known == sign).unwrap_or(0) as u32
}

/// How many signs the largest number of a grid of this size needs.
fn width(size: u128) -> usize {
    let bits = 128 - size.saturating_sub(1).leading_zeros() as usize;
    bits.div_ceil(5).max(1)
}

/// A number in base 32, with zeros in front up to this width.
fn base_32(number: u128, width: usize) -> String {
    let mut signs = Vec::new();
    let mut rest = number;
    while rest > 0 || signs.len() < width {
        signs.push(char::from(SIGNS[(rest % 32) as usize]));
        rest /= 32;
    }
    signs.into_iter().rev().collect()
}

fn lesson_signs(lesson: &Lesson) -> String {
    let kept = lesson.checksum() % 32_u32.pow(LESSON_SIGNS as u32);
    base_32(kept.into(), LESSON_SIGNS)
}

/// Two signs such that one wrong sign or two neighbours exchanged always show: a sum of worths,
/// weighted by powers of a primitive root, modulo a prime.
fn guard(id: &str, signs: &str) -> String {
    let mut weight = 1;
    let mut sum = 0;
    let worths = id.bytes().map(u32::from).chain(signs.bytes().map(worth));
    for worth in worths {
        weight = weight * GUARD_ROOT % GUARD_PRIME;
        sum = (sum + worth * weight) % GUARD_PRIME;
    }
    base_32(sum.into(), GUARD_SIGNS)
}
