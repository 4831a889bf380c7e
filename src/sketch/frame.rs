//! Where things of a problem stand in a drawing, and the drawing as it grows.

use super::scene::{Label, Line, Scene, Sector, Shape, Spot, Stroke};
use super::sheet::Sheet;
use super::{ForceMark, Ink};
use crate::plane::Vector;
use crate::problem::{Acting, Direction, ForceId, Place, Problem, Side};
use std::f64::consts::PI;

/// Rows that a body takes across and up on a usual screen.
const USUAL: (f64, f64) = (17.0, 9.0);

/// Where things stand: as the body stands, or with the body laid level.
pub(super) struct Frame<'a> {
    pub(super) problem: &'a Problem,
    pub(super) values: &'a [f64],
    /// What is beside the problem, of one that no lesson has.
    pub(super) sheet: Option<&'a Sheet>,
    /// Unit vector from foot to tip, as drawn.
    pub(super) along: Vector,
    /// Unit vector across the body, to its upper side, as drawn.
    pub(super) upper: Vector,
    /// Length of the body in metres.
    pub(super) length: f64,
    /// By how much every direction is turned, in radians.
    turned: f64,
    /// What has been drawn so far.
    pub(super) scene: Scene,
}

impl<'a> Frame<'a> {
    /// The frame as the body stands; `None` where the values cannot be drawn.
    pub(super) fn standing(problem: &'a Problem, values: &'a [f64]) -> Option<Frame<'a>> {
        Frame::turned(problem, values, false)
    }

    /// The same for a sheet.
    pub(super) fn of_sheet(sheet: &'a Sheet) -> Option<Frame<'a>> {
        let frame = Frame::standing(&sheet.problem, &sheet.values)?;
        Some(Frame {
            sheet: Some(sheet),
            ..frame
        })
    }

    /// The frame with the body laid level, its tip on its own side.
    pub(super) fn lying(problem: &'a Problem, values: &'a [f64]) -> Option<Frame<'a>> {
        Frame::turned(problem, values, true)
    }

    fn turned(problem: &'a Problem, values: &'a [f64], lying: bool) -> Option<Frame<'a>> {
        if values.len() < problem.givens().len() {
            return None;
        }
        let length = problem.distance(Place::Tip, values);
        let angle = problem.body_angle(values);
        if !(length.is_finite() && length > 0.0 && angle.is_finite()) {
            return None;
        }
        let side = problem.body().towards;
        let level = if side == Side::Right { 0.0 } else { PI };
        let turned = if lying { level - angle } else { 0.0 };
        let along = Vector::at_angle(angle + turned);
        Some(Frame {
            problem,
            values,
            sheet: None,
            along,
            upper: along.quarter_turn() * side.sign(),
            length,
            turned,
            scene: Scene::default(),
        })
    }

    /// About how many rows a metre takes on a usual screen.
    pub(super) fn usual_scale(&self) -> f64 {
        let (wide, high) = USUAL;
        let taken = (self.along.x.abs() / wide).max(self.along.y.abs() / high);
        1.0 / (taken * self.length)
    }

    /// True if the body is drawn level.
    pub(super) fn is_level(&self) -> bool {
        self.along.y.abs() < 1e-3
    }

    /// Distance from the foot, kept on or near the body whatever the values.
    pub(super) fn distance(&self, place: Place) -> f64 {
        let distance = self.problem.distance(place, self.values);
        if distance.is_finite() {
            distance.clamp(0.0, 1.5 * self.length)
        } else {
            0.0
        }
    }

    /// A place as a spot.
    pub(super) fn spot(&self, place: Place) -> Spot {
        self.spot_at(self.distance(place))
    }

    /// The spot at a distance from the foot, in metres.
    pub(super) fn spot_at(&self, distance: f64) -> Spot {
        Spot::at(self.along * distance)
    }

    /// A direction of the problem as drawn, in radians; straight up where the values fail.
    pub(super) fn angle(&self, direction: Direction) -> f64 {
        let angle = direction.angle(self.problem.body(), self.values) + self.turned;
        if angle.is_finite() { angle } else { PI / 2.0 }
    }

    /// Where a force acts.
    pub(super) fn place_of(&self, force: ForceId) -> Option<Place> {
        self.problem.force(force).map(|force| force.at)
    }

    /// Where a force acts, and its direction as drawn if it is known.
    pub(super) fn force(&self, id: ForceId, named: Option<f64>) -> Option<(Spot, Option<Vector>)> {
        let force = self.problem.force(id).filter(|_| !self.is_couple(id))?;
        let angle = match (named.filter(|angle| angle.is_finite()), force.acting) {
            (Some(angle), _) => Some(angle + self.turned),
            (None, Acting::Along(direction)) => Some(self.angle(direction)),
            (None, Acting::Anywhere) => None,
        };
        Some((self.spot(force.at), angle.map(Vector::at_angle)))
    }

    /// The same for a force that is known by its mark, if it has one.
    pub(super) fn marked(
        &self,
        id: ForceId,
        forces: &[ForceMark],
    ) -> Option<(Spot, Option<Vector>)> {
        let named = forces
            .iter()
            .find(|mark| mark.force == id)
            .and_then(|mark| mark.direction);
        self.force(id, named)
    }

    /// Adds a stroke.
    pub(super) fn draw(&mut self, ink: Ink, shape: Shape) {
        self.scene.strokes.push(Stroke { ink, shape });
    }

    /// Adds a straight line.
    pub(super) fn line(&mut self, ink: Ink, from: Spot, to: Spot, line: Line) {
        self.draw(ink, Shape::Line { from, to, line });
    }

    /// Adds a label; an empty text is left out.
    pub(super) fn label(&mut self, ink: Ink, text: &str, anchors: Vec<Spot>, lean: Vector) {
        if !text.trim().is_empty() && !anchors.is_empty() {
            self.scene.labels.push(Label {
                ink,
                text: crate::text::printable(text),
                anchors,
                lean,
                on: None,
                angle: None,
            });
        }
    }

    /// Adds the body itself.
    pub(super) fn body(&mut self) {
        let (foot, tip) = (self.spot_at(0.0), self.spot_at(self.length));
        self.line(Ink::Body, foot, tip, Line::Heavy);
    }

    /// Adds an arc from one direction to another, the short way, with its label.
    pub(super) fn arc(&mut self, ink: Ink, centre: Spot, from: f64, to: f64, text: &str) {
        let sweep = wrapped(to - from);
        let radius = arc_radius(sweep);
        let square = (sweep.abs() - PI / 2.0).abs() < 1e-6;
        if square {
            self.draw(
                ink,
                Shape::RightAngle {
                    corner: centre,
                    along: Vector::at_angle(from),
                    across: Vector::at_angle(to),
                },
            );
        } else {
            self.draw(
                ink,
                Shape::Arc {
                    centre,
                    radius,
                    from,
                    sweep,
                },
            );
        }
        let middle = Vector::at_angle(from + sweep / 2.0);
        let radius = if square { 1.3 } else { radius };
        let anchors = vec![
            centre.moved(middle * (radius + 0.2)),
            centre.moved(middle * (radius - 0.9)),
            centre.moved(middle * (radius + 1.6)),
        ];
        let before = self.scene.labels.len();
        self.label(ink, text, anchors, middle);
        if let Some(label) = self.scene.labels.get_mut(before) {
            label.angle = Some(Sector {
                centre,
                radius: if square { 1.0 } else { radius },
                from,
                sweep,
            });
        }
    }

    /// Adds stacked dimension lines: each from, to (metres along the body) and label. They stand
    /// on the side of `side`, the first `start` steps and `lines` rows off the body.
    pub(super) fn dimensions(
        &mut self,
        mut wanted: Vec<Span>,
        side: Vector,
        start: f64,
        lines: f64,
    ) {
        wanted.sort_by(|one, other| one.length().total_cmp(&other.length()));
        let mut rows: Vec<Vec<(f64, f64)>> = Vec::new();
        let slack = self.length * 0.02;
        for span in &wanted {
            let (low, high) = (span.from.min(span.to), span.from.max(span.to));
            let free = rows.iter().position(|row| {
                row.iter()
                    .all(|(from, to)| high <= from + slack || low >= to - slack)
            });
            let row = free.unwrap_or(rows.len());
            if row == rows.len() {
                rows.push(Vec::new());
            }
            rows[row].push((low, high));
            let apart = if self.is_level() { 1.0 } else { 1.7 };
            let off = |distance: f64| {
                self.spot_at(distance)
                    .moved(side * start)
                    .moved_rows(side * (lines + apart * row as f64))
            };
            let (from, to) = (off(span.from), off(span.to));
            let anchors = [0.5, 0.35, 0.65]
                .map(|share| off(span.from + (span.to - span.from) * share))
                .to_vec();
            if high - low > slack {
                self.draw(Ink::Distance, Shape::Dimension { from, to });
            }
            let before = self.scene.labels.len();
            self.label(Ink::Distance, &span.text, anchors, side);
            if let Some(label) = self.scene.labels.get_mut(before) {
                label.on = Some((from, to));
            }
        }
    }
}

/// A dimension wanted along the body.
pub(super) struct Span {
    /// Where it begins, in metres from the foot.
    pub(super) from: f64,
    /// Where it ends, in metres from the foot.
    pub(super) to: f64,
    /// Its label.
    pub(super) text: String,
}

impl Span {
    fn length(&self) -> f64 {
        (self.to - self.from).abs()
    }
}

/// An angle brought between −π and π.
pub(super) fn wrapped(angle: f64) -> f64 {
    Vector::at_angle(angle).angle()
}

/// Steps of an arc's radius: a narrow angle needs a wide arc to be seen.
pub(super) fn arc_radius(sweep: f64) -> f64 {
    (1.9 / sweep.abs().max(0.01)).clamp(2.4, 4.6)
}

/// The ink of a force.
pub(super) fn force_ink(problem: &Problem, force: ForceId) -> Ink {
    use crate::problem::LoadKind;
    match force {
        ForceId::OwnWeight => Ink::Weight,
        ForceId::Rope(_) => Ink::Rope,
        ForceId::Support(_) => Ink::Support,
        ForceId::Load(index) => match problem.loads().get(index).map(|load| load.kind) {
            Some(LoadKind::Force { .. }) => Ink::Load,
            _ => Ink::Weight,
        },
    }
}
