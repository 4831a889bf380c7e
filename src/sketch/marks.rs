//! What is to be drawn: only what the learner has named or found.

use crate::problem::{ForceId, Place};

/// How far the working has come, and so which drawing helps.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Stage {
    /// The scene as it is told: body, supports, ropes, loads.
    #[default]
    Scene,
    /// The body freed, with the named forces on it.
    Forces,
    /// The forces with the angles between them and the body.
    Angles,
    /// The components across the body.
    Components,
    /// The body alone, lying level, with what turns it and how far from the pivot.
    ///
    /// It lies level whatever its tilt: forces across it then stand upright, distances lie side
    /// by side, and the learner sees the plain lever that every tilted beam comes down to.
    Turning,
}

/// What to draw.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Marks {
    /// Which drawing.
    pub stage: Stage,
    /// Label the givens (lengths, masses, angles, given forces) on the scene.
    pub givens: bool,
    /// The forces to draw, and no others.
    pub forces: Vec<ForceMark>,
    /// A ring at the pivot.
    pub pivot: Option<Place>,
    /// At [`Stage::Angles`] and [`Stage::Forces`]: arcs and labels of the angles that the statement gives, of the body
    /// and of the ropes among the forces.
    pub given_angles: bool,
    /// Arcs between a force's line and the body.
    pub angles: Vec<AngleMark>,
    /// Components across the body.
    pub components: Vec<ComponentMark>,
    /// Distances from the pivot (from the foot, where no pivot is marked) to a force's place.
    pub distances: Vec<DistanceMark>,
    /// At [`Stage::Forces`]: behind the forces the scene stays in sight, with its distances and
    /// angles. It goes when the body is free.
    pub site: bool,
    /// The right triangle of a force that a hint speaks of. It takes the whole drawing.
    pub triangle: Option<TriangleMark>,
}

impl Marks {
    /// True if the scene stands behind the forces.
    pub(super) fn has_site(&self) -> bool {
        self.site && self.stage == Stage::Forces
    }

    /// True for a force that is drawn by its component alone: on the lever every force whose
    /// component is found, before that all but the newest.
    pub(super) fn is_replaced(&self, force: ForceId) -> bool {
        let found = self.components.iter().any(|part| part.force == force);
        let newest = self
            .components
            .last()
            .is_some_and(|part| part.force == force);
        match self.stage {
            Stage::Turning => found,
            Stage::Components => found && !newest,
            Stage::Scene | Stage::Forces | Stage::Angles => false,
        }
    }
}

/// Along which lines a force is resolved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Legs {
    /// Along and across the body.
    Body,
    /// Level and upright.
    Axes,
}

/// The right triangle of a force: the force is its long side.
#[derive(Clone, Debug, PartialEq)]
pub struct TriangleMark {
    /// Which force; its direction must be known.
    pub force: ForceId,
    /// The lines of its short sides.
    pub legs: Legs,
    /// What stands at the side along the body, or at the level one; empty for nothing.
    pub along: String,
    /// What stands at the side across the body, or at the upright one; empty for nothing.
    pub across: String,
    /// What stands at the angle between the force and the side `along`; empty for nothing.
    pub angle: String,
}

/// A force to draw.
#[derive(Clone, Debug, PartialEq)]
pub struct ForceMark {
    /// Which force.
    pub force: ForceId,
    /// What stands at its arrow: "W1", "T = 96.3 N".
    pub label: String,
    /// Its direction, anticlockwise from the x axis, in radians; of a couple up for anticlockwise
    /// and down for clockwise. `None`: the problem's own. A
    /// hinge force without a direction is drawn as a ring with a question mark beside it.
    pub direction: Option<f64>,
}

/// An angle between a force's line and the body to draw: the acute one, except for a force whose
/// angle with the body is given, where it is the given one.
///
/// The angle of a weight is the same at every weight, and is drawn at the one with most room.
#[derive(Clone, Debug, PartialEq)]
pub struct AngleMark {
    /// Whose angle.
    pub force: ForceId,
    /// What stands at the arc: "θ", "55°".
    pub label: String,
    /// How large the label says it is, in radians. Where the angle on the other side of the
    /// force's line comes nearer, that is drawn. `None` where the label says no size.
    pub size: Option<f64>,
}

/// A component across the body to draw.
#[derive(Clone, Debug, PartialEq)]
pub struct ComponentMark {
    /// Whose component.
    pub force: ForceId,
    /// What stands at its arrow: "W1⊥".
    pub label: String,
}

/// A distance to draw.
#[derive(Clone, Debug, PartialEq)]
pub struct DistanceMark {
    /// To the place of which force.
    pub force: ForceId,
    /// What stands at the line: "d1", "2.4 m".
    pub label: String,
}
