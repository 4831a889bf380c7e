//! What makes laminae and knots ones that can be drawn.

use super::check::{Use, Walk};
use super::{BodyId, Fault, Lamina, LaminaMass, Shape, System};
use crate::plane::Vector;

impl Walk<'_> {
    /// A knot is a point, which nothing can turn.
    pub(super) fn turns(&mut self, what: &str, body: BodyId) {
        if self.parts.bodies.get(body.0).is_some_and(|body| body.knot) {
            let what = what.to_owned();
            self.faults.push(Fault::TurnsKnot { what });
        }
    }

    pub(super) fn lamina(&mut self, noun: &str, lamina: &Lamina) {
        match lamina.mass {
            LaminaMass::Whole(mass) => self.uses.push((mass, Use::Mass)),
            LaminaMass::PerArea(density) => self.uses.push((density, Use::MassPerArea)),
            LaminaMass::OfPieces => {}
        }
        let each = lamina.mass == LaminaMass::OfPieces;
        for piece in &lamina.pieces {
            let lengths = match piece.shape {
                Shape::Rectangle { width, height } => vec![width, height],
                Shape::Triangle {
                    width,
                    height,
                    apex,
                } => {
                    self.place(apex);
                    vec![width, height]
                }
                Shape::Disc { radius }
                | Shape::Semicircle { radius }
                | Shape::QuarterCircle { radius } => vec![radius],
            };
            let lengths = lengths.into_iter().map(|length| (length, Use::Length));
            self.uses.extend(lengths);
            self.coordinate(&piece.x);
            self.coordinate(&piece.y);
            self.uses.extend(piece.mass.map(|mass| (mass, Use::Mass)));
            if piece.mass.is_some() != each {
                self.miss(noun);
            }
        }
        if lamina.pieces.is_empty() {
            self.miss(noun);
        }
    }

    /// All forces on a knot act at one point.
    pub(super) fn knots(&mut self, system: &System, values: &[f64]) {
        for (index, body) in self.parts.bodies.iter().enumerate() {
            let mut first: Option<Vector> = None;
            for act in system.acts().iter().filter(|_| body.knot) {
                for effect in act.on.iter().filter(|effect| effect.body.0 == index) {
                    let here = system.point(&effect.at, values);
                    let at = *first.get_or_insert(here);
                    if (here - at).size() > 1e-9 * (1.0 + at.size()) {
                        let what = act.noun.to_owned();
                        self.faults.push(Fault::ApartAtKnot { what });
                    }
                }
            }
        }
    }
}
