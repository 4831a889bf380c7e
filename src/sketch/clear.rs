//! Arrows made longer or shorter so that no head stands in the shaft of another and none runs
//! through an arc that is not its own.

use super::Ink;
use super::abreast::LEAD;
use super::angle::off_segment;
use super::fit::{ASPECT, Fit};
use super::scene::{Line, Scene, Shape, Spot};
use super::strokes::{WIDEST_RING, stands_aside};
use crate::plane::Vector;
use std::f64::consts::TAU;

/// Rows from a head to the shaft of another arrow within which it looks like a part of it.
pub(super) const ON: f64 = 0.6;
/// The same with room to spare.
pub(super) const NEAR: f64 = 0.8;
/// Rows from a head to another within which they look like one.
const TOGETHER: f64 = 1.3;
/// Rows from an arc within which an arrow runs through it.
const THROUGH: f64 = 0.3;
/// The least rows of an arrow that was made shorter.
const LEAST: f64 = 2.0;
/// By how many rows an arrow may change, those that change least first.
const CHANGES: [f64; 9] = [0.0, -1.0, 1.0, -2.0, 2.0, -3.0, 3.0, -4.0, -5.0];
/// By how many rows it may step aside, away from the body.
const ASIDE: [f64; 3] = [0.0, 1.5, 2.5];

/// An arrow on the grid, in rows, y down.
#[derive(Clone, Copy, Debug)]
pub(super) struct Laid {
    pub(super) ink: Ink,
    /// The point at which it acts, and its tail.
    pub(super) stands: (Spot, Spot),
    to: Spot,
    /// Its tail and its head.
    pub(super) ends: (Vector, Vector),
    /// Where a line leads to its tail from the point at which it acts.
    point: Vector,
}

/// An arc on the grid, in rows, y down.
#[derive(Clone, Debug)]
struct Arc {
    at: Spot,
    centre: Vector,
    radius: f64,
    /// Its inner part; nothing for a ring.
    points: Vec<Vector>,
}

/// What is in each other's way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Clash {
    /// The head of the first stands in the shaft of the second.
    StandsIn(Ink, Ink),
    /// The arrow runs through an arc that is not its own, around this cell.
    Crossed(Ink, (i64, i64)),
}

/// Arrows and arcs of a scene on the grid.
pub(super) struct Ways {
    pub(super) arrows: Vec<Laid>,
    arcs: Vec<Arc>,
    body: (Vector, Vector),
    /// True if there are dimension lines.
    measured: bool,
}

impl Ways {
    /// Those of a scene, but for arrows without length.
    pub(super) fn of(scene: &Scene, fit: &Fit) -> Ways {
        let rows = |spot: Spot| {
            let point = fit.point(spot);
            Vector::new(point.column / ASPECT, point.row)
        };
        let mut ways = Ways {
            arrows: Vec::new(),
            arcs: Vec::new(),
            body: Default::default(),
            measured: false,
        };
        for stroke in &scene.strokes {
            match stroke.shape {
                Shape::Arrow { acts, from, to, .. } => {
                    let ends = (rows(from), rows(to));
                    if (ends.1 - ends.0).size() > 1e-6 {
                        ways.arrows.push(Laid {
                            ink: stroke.ink,
                            stands: (acts, from),
                            to,
                            ends,
                            point: if stands_aside(acts, from) {
                                lead_from(rows(acts), ends)
                            } else {
                                ends.0
                            },
                        });
                    }
                }
                Shape::Arc {
                    centre,
                    radius,
                    from,
                    sweep,
                } => {
                    let ring = sweep.abs() > TAU - 1e-6;
                    let on = |step: u8| {
                        let out = Vector::at_angle(from + sweep * f64::from(step) / 20.0);
                        rows(centre.moved(out * radius))
                    };
                    ways.arcs.push(Arc {
                        at: centre,
                        centre: rows(centre),
                        radius: if ring {
                            (radius * fit.step).min(WIDEST_RING)
                        } else {
                            radius * fit.step
                        },
                        points: if ring {
                            Vec::new()
                        } else {
                            (3..=17).map(on).collect()
                        },
                    });
                }
                Shape::Line {
                    from,
                    to,
                    line: Line::Heavy,
                } => ways.body = (rows(from), rows(to)),
                Shape::Dimension { .. } => ways.measured = true,
                _ => {}
            }
        }
        ways
    }

    /// How many arrows are too short for their own arcs, or run through a ring.
    pub(super) fn crowded(&self) -> usize {
        let short = |arrow: &&Laid| {
            (self.arcs.iter())
                .any(|arc| arc.is_beyond(arrow) || arc.is_ring() && arc.is_crossed(arrow))
        };
        self.arrows.iter().filter(short).count()
    }

    /// True for a single whole force without an arc, which must stay at its line.
    fn may_step_aside(&self, group: &[Laid]) -> bool {
        let bound = |arc: &Arc| !arc.is_ring() && arc.belongs_to(&group[0]);
        group.len() == 1 && group[0].ink != Ink::Component && !self.arcs.iter().any(bound)
    }

    /// The direction across an arrow that leads away from the body.
    fn away(&self, arrow: &Laid) -> Vector {
        let (tail, head) = arrow.ends;
        let across = (head - tail).quarter_turn() * (1.0 / (head - tail).size());
        let middle = (tail + head) * 0.5;
        let off = |side: f64| off_segment(middle + across * side, self.body);
        across * if off(1.0) >= off(-1.0) { 1.0 } else { -1.0 }
    }

    /// All that is in each other's way; a head so many rows from a shaft stands in it.
    pub(super) fn clashes(&self, on: f64) -> Vec<Clash> {
        let mut clashes = Vec::new();
        for one in &self.arrows {
            let standing = (self.arrows.iter()).filter(|other| stands_in(one, other, on));
            clashes.extend(standing.map(|other| Clash::StandsIn(one.ink, other.ink)));
            let crossed = |arc: &&Arc| !arc.is_ring() && arc.is_crossed(one);
            for arc in self.arcs.iter().filter(crossed) {
                let cell = |rows: f64| libm::floor(rows) as i64;
                let at = (cell(arc.centre.x * ASPECT), cell(arc.centre.y));
                clashes.push(Clash::Crossed(one.ink, at));
            }
        }
        clashes
    }

    /// How much a group of arrows and all else are in each other's way.
    fn crowding(&self, group: &[Laid]) -> usize {
        let tail = group.first().map(|arrow| arrow.stands);
        let mut count = 0;
        for one in group {
            for other in (self.arrows.iter()).filter(|other| Some(other.stands) != tail) {
                let together = (one.ends.1 - other.ends.1).size() < TOGETHER;
                let apart = one.stands.0 != other.stands.0;
                count += 6 * usize::from(stands_in(one, other, NEAR))
                    + 6 * usize::from(stands_in(other, one, NEAR))
                    + 2 * usize::from(apart && together);
            }
            for arc in &self.arcs {
                let through = if arc.is_ring() { 1 } else { 2 };
                count +=
                    through * usize::from(arc.is_crossed(one)) + usize::from(arc.is_beyond(one));
            }
        }
        count
    }

    /// How far aside, in rows, and by what share of its length a group had best change; `None`
    /// where it had best stay.
    fn best_change(
        &self,
        group: &[Laid],
        length: f64,
        (columns, rows): (u16, u16),
    ) -> Option<(Vector, f64)> {
        let now = self.crowding(group);
        if now == 0 {
            return None;
        }
        let inside = |arrow: &Laid| {
            let head = arrow.ends.1;
            let within = |at: f64, wide: f64| at > 1.0 && at < wide - 1.0;
            within(head.x, f64::from(columns) / ASPECT) && within(head.y, f64::from(rows))
        };
        let sides = if self.may_step_aside(group) {
            ASIDE.len()
        } else {
            1
        };
        let away = self.away(&group[0]);
        let allowed = |aside: f64, change: f64| {
            let longer = change > 0.0;
            let moved = changed(group, away * aside, (length + change) / length);
            let fits = !longer && aside == 0.0 || moved.iter().all(inside);
            // Below a level body dimension lines stand where a longer arrow would end.
            let free = !(longer && self.measured);
            (fits && free && (change == 0.0 || length + change >= LEAST)).then_some(moved)
        };
        (ASIDE[..sides].iter())
            .flat_map(|aside| CHANGES.map(|change| (*aside, change)))
            .filter_map(|(aside, change)| {
                let crowding = self.crowding(&allowed(aside, change)?);
                Some((crowding, away * aside, (length + change) / length))
            })
            .min_by_key(|(crowding, ..)| *crowding)
            .filter(|(crowding, ..)| *crowding < now)
            .map(|(_, aside, share)| (aside, share))
    }
}

/// Where the straight part of a lead to the tail of an arrow begins: beside an upright arrow it
/// runs level in the row of the tail.
fn lead_from(acts: Vector, (tail, head): (Vector, Vector)) -> Vector {
    let run = head - tail;
    if run.x.abs() < 0.02 * run.y.abs() {
        Vector::new(acts.x, tail.y)
    } else {
        acts
    }
}

impl Arc {
    fn is_ring(&self) -> bool {
        self.points.is_empty()
    }

    /// True if the arc is one of the angle of this arrow.
    fn belongs_to(&self, arrow: &Laid) -> bool {
        let (tail, head) = arrow.ends;
        off_segment(self.centre, (tail * 2.0 - head, head)) < THROUGH
    }

    fn is_crossed(&self, arrow: &Laid) -> bool {
        if self.is_ring() {
            return self.at != arrow.stands.0
                && off_segment(self.centre, arrow.ends) < self.radius + THROUGH;
        }
        let through = |point: &Vector| off_segment(*point, arrow.ends) < THROUGH;
        !self.belongs_to(arrow) && self.points.iter().any(through)
    }

    /// True if an arrow is too short for its own arc.
    fn is_beyond(&self, arrow: &Laid) -> bool {
        !self.is_ring()
            && self.belongs_to(arrow)
            && (arrow.ends.1 - self.centre).size() < self.radius + 0.4
    }
}

/// True if the head of one arrow stands in the shaft of another that acts elsewhere.
fn stands_in(one: &Laid, other: &Laid, on: f64) -> bool {
    let near = |line| off_segment(one.ends.1, line) < on;
    one.stands.0 != other.stands.0 && (near(other.ends) || near((other.point, other.ends.0)))
}

/// Makes arrows longer or shorter where that keeps them out of each other's way. A force, its
/// component and what joins them change together, and labels go with their heads.
pub(super) fn clear(scene: &mut Scene, fit: &Fit, (columns, rows): (u16, u16)) {
    let tails = Ways::of(scene, fit).arrows;
    for (rank, first) in tails.iter().enumerate() {
        let (acts, from) = first.stands;
        let known = tails[..rank]
            .iter()
            .any(|other| other.stands == first.stands);
        // One that pushes from outside has its head at its point.
        if known || !(from == acts || stands_aside(acts, from)) {
            continue;
        }
        let ways = Ways::of(scene, fit);
        let group: Vec<Laid> = (ways.arrows.iter().copied())
            .filter(|arrow| arrow.stands == first.stands)
            .collect();
        let length = (group.iter())
            .map(|arrow| (arrow.ends.1 - arrow.ends.0).size())
            .fold(0.0, f64::max);
        if length < 1e-6 {
            continue;
        }
        if let Some((aside, share)) = ways.best_change(&group, length, (columns, rows)) {
            stretch(scene, &group, share);
            if aside.size() > 1e-6 {
                step_aside(scene, &group[0], Vector::new(aside.x, -aside.y));
            }
        }
    }
}

/// A group of arrows moved aside by so many rows and made longer or shorter.
fn changed(group: &[Laid], aside: Vector, share: f64) -> Vec<Laid> {
    let change = |arrow: &Laid| {
        let (tail, head) = arrow.ends;
        Laid {
            ends: (tail + aside, tail + (head - tail) * share + aside),
            ..*arrow
        }
    };
    group.iter().map(change).collect()
}

/// Moves an arrow aside by so many rows, y up, and its label with it.
fn step_aside(scene: &mut Scene, arrow: &Laid, aside: Vector) {
    let (acts, tail) = arrow.stands;
    let runs = arrow.ends.1 - arrow.ends.0;
    let onward = Vector::new(runs.x, -runs.y) * (1.0 / runs.size());
    for stroke in &mut scene.strokes {
        let Shape::Arrow {
            acts: at, from, to, ..
        } = &mut stroke.shape
        else {
            continue;
        };
        if (*at, *from) != arrow.stands {
            continue;
        }
        let head = *to;
        *to = to.moved_rows(aside);
        *from = from.moved_rows(aside);
        if tail == acts {
            *from = from.moved_rows(onward * LEAD);
        }
        for label in &mut scene.labels {
            if label.anchors.contains(&head) {
                for anchor in &mut label.anchors {
                    *anchor = anchor.moved_rows(aside);
                }
            }
        }
    }
}

/// Changes the length of a group of arrows with one tail, and of all that ends at their heads.
fn stretch(scene: &mut Scene, group: &[Laid], share: f64) {
    let Some(from) = group.first().map(|arrow| arrow.stands.1) else {
        return;
    };
    let scaled = |spot: Spot| Spot {
        at: spot.at,
        shift: from.shift + (spot.shift - from.shift) * share,
        rows: from.rows + (spot.rows - from.rows) * share,
    };
    let moved: Vec<Spot> = group.iter().map(|arrow| arrow.to).collect();
    let change = |spot: &mut Spot| {
        if moved.contains(spot) {
            *spot = scaled(*spot);
        }
    };
    for label in &mut scene.labels {
        if label.anchors.iter().any(|anchor| moved.contains(anchor)) {
            label.anchors = label.anchors.iter().copied().map(scaled).collect();
        }
    }
    for stroke in &mut scene.strokes {
        match &mut stroke.shape {
            Shape::Line { from, to, .. } => {
                change(from);
                change(to);
            }
            Shape::Arrow { to, .. } => change(to),
            Shape::RightAngle { corner, .. } => change(corner),
            _ => {}
        }
    }
}
