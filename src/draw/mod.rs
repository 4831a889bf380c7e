//! Numbers worth asking: candidates from a seed, the rules that refuse some of them, and codes
//! that carry a problem's numbers.
//!
//! A seed gives a stream of places in a lesson's grid ([`candidates`]); the first that no rule
//! refuses is drawn ([`draw`]). A [`code()`] names one place, whatever seed it came from, so that
//! a change to what is worth asking never changes the problem behind a code.

mod code;
mod filter;
mod seed;

pub use crate::lesson::{Grid, GridPlace};
pub use code::{CodeTrouble, code, parse_code};
pub use filter::{Refusal, misnamed, refuse};
pub use seed::{Candidates, candidates};

use crate::key::derive;
use crate::lesson::Lesson;
use crate::problem::Problem;

/// The most candidates that are looked at for one draw.
pub const MOST_TRIES: usize = 20_000;

/// What turns a problem's seed into its sister's.
const SISTER: u64 = 0x5157_e2ed_0a11_0c8d;

/// A problem drawn from a lesson.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// Its place in the lesson's grid, of which [`code()`] makes its code.
    pub place: GridPlace,
    /// The problem.
    pub problem: Problem,
    /// How many candidates were looked at, this one included.
    pub tried: usize,
}

/// The first candidate of a seed that no draw rule refuses; `None` if there is none among the
/// first 20,000.
pub fn draw(lesson: &Lesson, seed: u64, language: &str) -> Option<Drawn> {
    first_kept(lesson, seed, language, &|_| true)
}

/// A sister of a drawn problem: another draw of the same lesson and the same variant, with other
/// numbers.
pub fn draw_sister(lesson: &Lesson, drawn: &GridPlace, seed: u64, language: &str) -> Option<Drawn> {
    first_kept(lesson, seed ^ SISTER, language, &|place| {
        place.variant == drawn.variant && place != drawn
    })
}

/// The first candidate among those wanted that no draw rule refuses.
fn first_kept(
    lesson: &Lesson,
    seed: u64,
    language: &str,
    wanted: &dyn Fn(&GridPlace) -> bool,
) -> Option<Drawn> {
    let numbered = candidates(lesson, seed).take(MOST_TRIES).enumerate();
    numbered
        .filter(|(_, place)| wanted(place))
        .find_map(|(index, place)| {
            let problem = lesson.problem_at(&place, language).ok()?;
            let key = derive(&problem).ok()?;
            let tried = index + 1;
            refuse(&problem, &key).is_none().then_some(Drawn {
                place,
                problem,
                tried,
            })
        })
}
