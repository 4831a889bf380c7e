//! The marks for points and faces, which a legend explains.

use super::{Ink, Scene, Shape};

/// What a mark in a picture means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PointMark {
    /// A point at which a force acts or something is tied.
    Knot,
    /// A hinge.
    Hinge,
    /// A roller.
    Wheel,
    /// What a hinge stands on.
    Stand,
    /// The pivot.
    Pivot,
    /// A direction still to be found.
    Open,
    /// Ground, a wall or a ceiling.
    Face,
}

impl PointMark {
    /// All marks, in the order in which they are explained.
    pub const ALL: [PointMark; 7] = [
        PointMark::Hinge,
        PointMark::Stand,
        PointMark::Wheel,
        PointMark::Face,
        PointMark::Knot,
        PointMark::Pivot,
        PointMark::Open,
    ];

    /// Its character; the plain one where only ASCII may be shown.
    pub fn glyph(self, unicode: bool) -> char {
        let (fine, plain) = match self {
            PointMark::Knot => ('●', '*'),
            PointMark::Hinge => ('○', 'o'),
            PointMark::Wheel => ('O', 'O'),
            PointMark::Stand => ('△', 'A'),
            PointMark::Pivot => ('◎', '@'),
            PointMark::Open => ('?', '?'),
            PointMark::Face => ('╱', '/'),
        };
        if unicode { fine } else { plain }
    }
}

impl Shape {
    /// The mark of a point or a face.
    pub(super) fn point_mark(&self) -> Option<PointMark> {
        match self {
            Shape::Hinge(_) => Some(PointMark::Hinge),
            Shape::Stand(_) => Some(PointMark::Stand),
            Shape::Wheel(_) => Some(PointMark::Wheel),
            Shape::Knot(_) => Some(PointMark::Knot),
            Shape::Ring(_) => Some(PointMark::Pivot),
            Shape::Face { .. } => Some(PointMark::Face),
            _ => None,
        }
    }
}

impl Scene {
    /// The marks that stand in this scene.
    pub fn point_marks(&self) -> Vec<PointMark> {
        let open = |label: &super::Label| label.ink == Ink::Support && label.text.ends_with('?');
        PointMark::ALL
            .into_iter()
            .filter(|mark| match mark {
                PointMark::Open => self.labels.iter().any(open),
                mark => {
                    (self.strokes.iter()).any(|stroke| stroke.shape.point_mark() == Some(*mark))
                }
            })
            .collect()
    }
}
