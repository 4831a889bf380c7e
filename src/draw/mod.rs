//! Numbers worth asking: candidates from a seed, the rules that refuse some of them, and codes
//! that carry a problem's numbers.
//!
//! A seed gives a stream of places in a lesson's grid ([`candidates`]); the first that no rule
//! refuses is drawn ([`draw`]). A [`code()`] names one place, whatever seed it came from, so that
//! a change to what is worth asking never changes the problem behind a code.

mod code;
mod filter;
mod refused;
mod seed;
mod survey;

pub use crate::lesson::{Grid, GridPlace};
pub use code::{CodeTrouble, code, parse_code};
pub use filter::{Refusal, misnamed, refuse};
pub use refused::{Refused, refusals};
pub use seed::{Candidates, candidates};
pub use survey::{LEAST_KEPT, LEAST_PROBLEMS, Survey, survey};

use crate::key::{Key, Sample, Sampling, derive};
use crate::lesson::Lesson;
use crate::problem::Problem;

/// The most candidates that are looked at for one draw.
pub const MOST_TRIES: usize = 20_000;

/// Of a draw at most this share of the mistakes' prior weight should come under another mistake's
/// name by a number at the pull, or be taken for right.
const MOST_MISNAMED: f64 = 0.02;
/// So many kept candidates are looked at for one that misnames less; then the best of them is drawn.
const MOST_KEPT: usize = 12;

/// Of so many candidates one is looked for that is worked by the same formulas; after that, any.
const TRIES_ALIKE: usize = 2_000;
/// Which candidates are wanted, by their place and then by their working.
type Wanted<'a> = (
    &'a dyn Fn(&GridPlace) -> bool,
    &'a dyn Fn(&Key, &Sample) -> bool,
);

/// What turns a problem's seed into its sister's.
const SISTER: u64 = 0x5157_e2ed_0a11_0c8d;
/// Every value asked for in a sister problem lies farther than this share from the drawn one's, so
/// that a step worked there never shows the learner's own answer.
const SISTERS_APART: f64 = 0.05;

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

/// The first candidate of a seed that no draw rule refuses and in which mistakes are told apart well
/// enough by a number at the pull: of the first twelve that are kept the best where all misname more
/// than 2 % of the mistakes' weight. `None` if none is kept among the first 20,000.
pub fn draw(lesson: &Lesson, seed: u64, language: &str) -> Option<Drawn> {
    let any: Wanted<'_> = (&|place| lesson.may_draw(place), &|_, _| true);
    first_kept(lesson, (seed, MOST_TRIES), language, any)
}

/// A sister of a drawn problem: another draw of the same lesson and the same variant, with another
/// number for every quantity that is drawn and another value at every step that is asked, worked by
/// the same formulas if one is soon found. Where a lesson leaves too little choice for that, only the
/// numbers as a whole are others.
pub fn draw_sister(lesson: &Lesson, drawn: &GridPlace, seed: u64, language: &str) -> Option<Drawn> {
    let own = lesson.problem_at(drawn, language).ok()?;
    let (own_key, own_sampling) = (derive(&own).ok()?, Sampling::of(&own));
    let choices = lesson.grid().variants().get(drawn.variant)?;
    let all_other = |place: &GridPlace| {
        let mut drawn = choices.iter().zip(&place.indices).zip(&drawn.indices);
        drawn.all(|((count, index), own)| *count == 1 || index != own)
    };
    let apart = |key: &Key, sample: &Sample| {
        own_key.asked().all(|step| {
            let share = own_key.share_apart(step.id, own_sampling.own(), (key, sample));
            share.is_none_or(|share| share > SISTERS_APART)
        })
    };
    let same_kind = |place: &GridPlace| place.variant == drawn.variant && place != drawn;
    let other = |place: &GridPlace| same_kind(place) && all_other(place);
    // The same angles are sums here and there, so that what is worked there goes the same way here.
    let alike = |key: &Key, sample: &Sample| {
        let rule = |id| key.step(id).map(|step| &step.rule);
        let mut asked = own_key.asked();
        asked.all(|step| rule(step.id) == Some(&step.rule)) && apart(key, sample)
    };
    let seed = seed ^ SISTER;
    let tries: [(usize, Wanted<'_>); 3] = [
        (TRIES_ALIKE, (&other, &alike)),
        (MOST_TRIES, (&other, &apart)),
        (MOST_TRIES, (&same_kind, &|_, _| true)),
    ];
    let mut tries = tries.into_iter();
    tries.find_map(|(most, wanted)| first_kept(lesson, (seed, most), language, wanted))
}

/// The first candidate among those wanted, by its place and then by its working, that no draw rule
/// refuses and that misnames little.
fn first_kept(
    lesson: &Lesson,
    (seed, most): (u64, usize),
    language: &str,
    (wanted, fits): Wanted<'_>,
) -> Option<Drawn> {
    let numbered = candidates(lesson, seed).take(most).enumerate();
    let kept = numbered
        .filter(|(_, place)| wanted(place))
        .filter_map(|(index, place)| {
            let problem = lesson.problem_at(&place, language).ok()?;
            let key = derive(&problem).ok()?;
            let tried = index + 1;
            let is_kept =
                fits(&key, Sampling::of(&problem).own()) && refuse(&problem, &key).is_none();
            let drawn = Drawn {
                place,
                problem,
                tried,
            };
            is_kept.then(|| (misnamed(&drawn.problem, &key), drawn))
        });
    let mut best: Option<(f64, Drawn)> = None;
    for (share, drawn) in kept.take(MOST_KEPT) {
        if share <= MOST_MISNAMED {
            return Some(drawn);
        }
        if best.as_ref().is_none_or(|(least, _)| share < *least) {
            best = Some((share, drawn));
        }
    }
    best.map(|(_, drawn)| drawn)
}
