//! How much of a lesson's problem is taken by the learner: what is offered, and what is chosen.

use super::door::Opening;
use crate::record::Standing;
use crate::session::Fading;
use crate::text::Words;

/// What is offered to a learner who stands so with a lesson: something new is seen worked first, of
/// what is begun the last steps are left, and the rest is worked alone.
pub fn offered(standing: Standing) -> Fading {
    match standing {
        Standing::New => Fading::Worked,
        Standing::Begun => Fading::Last(None),
        Standing::Mastered | Standing::Due => Fading::All,
    }
}

/// The next of the ways in which a problem may be taken, what is offered first.
pub fn next_fading(standing: Standing, taken: Fading) -> Fading {
    let (worked, last) = (Fading::Worked, Fading::Last(None));
    let ways = match offered(standing) {
        Fading::Last(_) => [last, worked, Fading::All],
        Fading::Worked | Fading::All => [worked, last, Fading::All],
    };
    let place = ways.iter().position(|way| *way == taken);
    ways[place.map_or(0, |place| (place + 1) % ways.len())]
}

/// An opening that is taken so: its first line is entered at once, as if it had been typed. What
/// was left before stands as it was.
#[must_use]
pub fn taken(opening: Opening, fading: Fading, words: &Words) -> Opening {
    let first = fading.line(words).filter(|_| !opening.resumed);
    Opening { first, ..opening }
}

#[cfg(test)]
mod tests {
    use super::*;
    use Standing::{Begun, Due, Mastered, New};

    #[test]
    fn each_press_leads_on_and_what_is_offered_comes_first() {
        let (all, last, worked) = (Fading::All, Fading::Last(None), Fading::Worked);
        for (standing, expected) in [
            (New, [worked, last, all]),
            (Begun, [last, worked, all]),
            (Mastered, [worked, last, all]),
            (Due, [worked, last, all]),
        ] {
            let mut way = all;
            for wanted in expected {
                way = next_fading(standing, way);
                assert_eq!(way, wanted, "{standing:?}");
            }
        }
        assert_eq!(offered(Mastered), all);
    }

    #[test]
    fn what_a_line_says_is_what_it_takes() {
        let words = Words::english();
        for (line, told) in [
            ("worked", Some(Fading::Worked)),
            ("A worked example", None),
            ("an example.", Some(Fading::Worked)),
            ("last", Some(Fading::Last(None))),
            ("Last 3", Some(Fading::Last(Some(3)))),
            ("the last 4 steps", Some(Fading::Last(Some(4)))),
            ("3 last 4", None),
            ("3", None),
            ("", None),
            ("last 99999999999999999999999", None),
        ] {
            assert_eq!(Fading::told(&words, line), told, "{line}");
        }
        for way in [Fading::Worked, Fading::Last(None), Fading::Last(Some(2))] {
            let line = way.line(&words).unwrap_or_default();
            assert_eq!(Fading::told(&words, &line), Some(way));
        }
    }
}
