//! What a given is, with the line from which an angle is measured.

use super::Session;
use crate::problem::{Direction, GivenId, LoadKind, Reference, Tilt};
use crate::text::{Slot, Words};

impl Session {
    /// What a given is: "angle of the mast with the vertical". A meaning that names the line
    /// already stays as it is.
    pub(super) fn given_meaning(&self, id: GivenId) -> String {
        let meaning = self.problem.given(id).meaning.clone();
        let lower = meaning.to_lowercase();
        let said = Words::listed("name.angle.said");
        let Some(line) = self.line_of_angle(id) else {
            return meaning;
        };
        if meaning.is_empty() || said.iter().any(|word| lower.contains(word.as_str())) {
            return meaning;
        }
        let slots = [("body", Slot::Word(self.problem.body().noun.clone()))];
        format!("{meaning} {}", self.words.say(line, &slots))
    }

    /// The words for the line from which a given angle is measured.
    fn line_of_angle(&self, id: GivenId) -> Option<&'static str> {
        let word = |from: Reference| match from {
            Reference::Horizontal => "name.angle.horizontal",
            Reference::Vertical => "name.angle.vertical",
        };
        if let Tilt::Rising { angle, from } = self.problem.body().tilt
            && angle == id
        {
            return Some(word(from));
        }
        let ropes = self.problem.ropes().iter().map(|rope| rope.direction);
        let loads = self
            .problem
            .loads()
            .iter()
            .filter_map(|load| match load.kind {
                LoadKind::Force { direction, .. } => Some(direction),
                LoadKind::Mass(_) => None,
            });
        ropes.chain(loads).find_map(|direction| match direction {
            Direction::Oblique { angle, from, .. } if angle == id => Some(word(from)),
            Direction::FromBody { angle } if angle == id => Some("name.angle.body"),
            _ => None,
        })
    }
}
