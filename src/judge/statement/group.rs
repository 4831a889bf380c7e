//! What is heard of one force, before it is settled which force it is.

use super::place::{Where, apart};
use super::stretch::Stretch;
use super::subject::Subject;
use super::way::{ToBody, Way};
use crate::problem::{ForceId, Problem};

/// What is said of one force.
#[derive(Default)]
pub(super) struct Group {
    pub(super) subject: Option<Subject>,
    pub(super) place: Option<Where>,
    /// Another place, said after the first.
    pub(super) second: Option<Where>,
    /// The stretch of the body in which it was said to act.
    pub(super) rough: Option<Stretch>,
    /// A length was only told roughly: "about 2 m".
    pub(super) about: bool,
    pub(super) way: Way,
    pub(super) number: Option<f64>,
    /// What the force was said to act on.
    pub(super) onto: Option<Subject>,
    /// The thing at which it was said to act.
    pub(super) beside: Option<Subject>,
    /// A word for a force or for acting stands with it: "pull", "pushes".
    pub(super) acting: bool,
    /// It was called a weight.
    pub(super) weight: bool,
    /// A further noun, of which it is unclear whether it is a place or a force.
    pub(super) doubt: Option<ForceId>,
    /// Something of it was denied.
    pub(super) denied: bool,
    /// The force itself was denied: "no weight of the mast".
    pub(super) refused: bool,
    /// It was left open between two: "up or down".
    pub(super) undecided: bool,
    /// It is named by a bare noun.
    pub(super) bare: bool,
    /// Its way was said before its name.
    pub(super) way_first: bool,
    /// It was said to push.
    pub(super) pushes: bool,
    /// It was said to lift.
    pub(super) lifts: bool,
    /// It was called a moment.
    pub(super) moment: bool,
    /// Its size was told.
    pub(super) sized: bool,
    /// What makes it is a word that is not known: "the weight of the bag".
    pub(super) strange: bool,
    /// It opened with words that are not known, and a comma: "bag, tip, down".
    pub(super) strange_first: bool,
}

impl Group {
    /// Takes a place; one that differs from the first is kept beside it.
    pub(super) fn put(&mut self, place: Where) {
        if let Where::Within(stretch) = place {
            let both = self.rough.map_or(stretch, |rough| rough.and(stretch));
            self.rough = Some(both);
            return;
        }
        match self.place {
            None => self.place = Some(place),
            Some(first) if apart(first, place) => self.second = Some(place),
            Some(_) => {}
        }
    }

    /// True where a place was said, exactly or roughly.
    pub(super) fn is_placed(&self) -> bool {
        self.place.is_some() || self.rough.is_some()
    }

    /// The place that was said, as near as it was said.
    pub(super) fn whereabouts(&self, problem: &Problem) -> Option<Where> {
        let rough = self.rough.map(Where::Within);
        match self.place {
            Some(Where::There) => {
                let pointed = self.rough.map(Stretch::pointed);
                pointed.map(Where::Within).or(self.place)
            }
            Some(Where::At(metres)) if self.about => {
                Some(Where::Within(Stretch::about(problem, metres)))
            }
            place => place.or(rough),
        }
    }

    /// "Towards the top", and then "of the hide": whose place that is, to which a rope runs.
    pub(super) fn towards_a_place_of(&mut self, owner: Subject) {
        let rope = matches!(owner, Subject::Behind(behind) if behind.rope);
        if rope && self.way.to_body == Some(ToBody::Towards) {
            self.way.to_body = Some(ToBody::RopeEnd);
        }
    }

    /// True where two places were said that differ.
    pub(super) fn has_two_places(&self) -> bool {
        let pair = self.place.zip(self.second);
        let point = match self.place {
            Some(Where::At(metres)) => Some(metres),
            _ => self.number,
        };
        let outside = |rough: Stretch| match point {
            Some(metres) => !rough.holds(metres),
            None => rough.is_empty(),
        };
        pair.is_some_and(|(first, second)| apart(first, second)) || self.rough.is_some_and(outside)
    }
}
