//! How large a scene is drawn, and where on the grid.

use super::guise::{TURN, TURNED, top_of};
use super::letters::width;
use super::scene::{Label, Scene, Shape, Spot};
use crate::plane::Vector;

/// Columns in the height of a row.
pub(super) const ASPECT: f64 = 2.0;

/// The way from a scene to the grid.
#[derive(Clone, Copy, Debug)]
pub(super) struct Fit {
    /// Rows in a metre.
    scale: f64,
    /// Rows in a step.
    pub(super) step: f64,
    /// Column of the scene's origin.
    left: f64,
    /// Row of the scene's origin.
    top: f64,
}

/// Arrows of less than this share of their usual length are only drawn where nothing else fits.
const SHORTEST: f64 = 0.66;

/// Rows in a step below which a usual arrow is hardly more than its head.
const SHAFTLESS: f64 = 0.52;

/// A point on the grid: columns from the left and rows from the top, in parts of a cell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Point {
    pub(super) column: f64,
    pub(super) row: f64,
}

impl Fit {
    /// Where a spot falls.
    pub(super) fn point(&self, spot: Spot) -> Point {
        Point {
            column: self.left
                + ASPECT * (self.scale * spot.at.x + self.step * spot.shift.x + spot.rows.x),
            row: self.top - (self.scale * spot.at.y + self.step * spot.shift.y + spot.rows.y),
        }
    }

    /// The best fit of a scene into a grid; `None` where there is nothing that can be drawn.
    pub(super) fn of(scene: &Scene, columns: u16, rows: u16) -> Option<Fit> {
        Fit::fits(scene, columns, rows).into_iter().next()
    }

    /// Fits of a scene into a grid, the best first: those after it have shorter arrows beside a
    /// larger body.
    pub(super) fn fits(scene: &Scene, columns: u16, rows: u16) -> Vec<Fit> {
        if columns < 4 || rows < 3 {
            return Vec::new();
        }
        let (wide, high) = (f64::from(columns), f64::from(rows));
        let plain: Vec<Reach> = scene.strokes.iter().flat_map(stroke_reach).collect();
        if plain.is_empty() || plain.iter().any(|reach| !reach.is_sound()) {
            return Vec::new();
        }
        let mut labelled = plain.clone();
        labelled.extend(scene.labels.iter().filter_map(label_reach));
        let usual = (wide / 54.0).min(high / 20.0).clamp(0.55, 1.6);
        let mut best: Option<(f64, Fit)> = None;
        let mut fits = Vec::new();
        for (reaches, least) in [(&labelled, 0.55), (&plain, 0.5)] {
            if !fits.is_empty() {
                break;
            }
            for share in [1.5, 1.35, 1.2, 1.1, 1.0, 0.88, 0.76, 0.66, 0.56, 0.48, 0.4] {
                let step = usual * share;
                let Some((size, fit)) = largest(reaches, step, wide, high) else {
                    continue;
                };
                // A head without a shaft points nowhere.
                if step < SHAFTLESS && (best.is_some() || !fits.is_empty()) {
                    continue;
                }
                // The body must not dwindle beside its arrows.
                if size > if share > 1.0 { 0.72 } else { least } {
                    if fits.is_empty() || share >= SHORTEST {
                        fits.push(fit);
                    }
                    continue;
                }
                if best.is_none_or(|(known, _)| size > known + 0.02) {
                    best = Some((size, fit));
                }
            }
        }
        if fits.is_empty() {
            fits.extend(best.map(|(_, fit)| fit));
        }
        fits
    }
}

/// A spot that must be inside, with room around it: left, right, up, down, in cells.
#[derive(Clone, Copy, Debug)]
struct Reach {
    spot: Spot,
    room: [f64; 4],
}

impl Reach {
    fn is_sound(&self) -> bool {
        let Spot { at, shift, rows } = self.spot;
        [at.x, at.y, shift.x, shift.y, rows.x, rows.y]
            .iter()
            .all(|part| part.is_finite() && part.abs() < 1e100)
    }
}

/// The largest scale at which all reaches fit, and how much of the grid the model then takes.
fn largest(reaches: &[Reach], step: f64, wide: f64, high: f64) -> Option<(f64, Fit)> {
    let across = extent(reaches.iter().map(|reach| reach.spot.at.x));
    let up = extent(reaches.iter().map(|reach| reach.spot.at.y));
    let most = (across.1 - across.0).max(up.1 - up.0);
    if most <= 0.0 {
        return None;
    }
    let mut scale = wide.max(high) / most;
    for _ in 0..240 {
        let columns = reaches.iter().flat_map(|reach| {
            let spot = &reach.spot;
            let at = ASPECT * (scale * spot.at.x + step * spot.shift.x + spot.rows.x);
            [at - reach.room[0], at + reach.room[1]]
        });
        let lines = reaches.iter().flat_map(|reach| {
            let spot = &reach.spot;
            let at = -(scale * spot.at.y + step * spot.shift.y + spot.rows.y);
            [at - reach.room[2], at + reach.room[3]]
        });
        let (left, right) = extent(columns);
        let (top, bottom) = extent(lines);
        if right - left <= wide && bottom - top <= high {
            let fit = Fit {
                scale,
                step,
                left: (wide - (right - left)) / 2.0 - left,
                top: (high - (bottom - top)) / 2.0 - top,
            };
            let size =
                (ASPECT * scale * (across.1 - across.0) / wide).max(scale * (up.1 - up.0) / high);
            return Some((size, fit));
        }
        scale *= 0.98;
    }
    None
}

fn extent(values: impl Iterator<Item = f64>) -> (f64, f64) {
    values.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
        (low.min(value), high.max(value))
    })
}

fn stroke_reach(stroke: &super::Stroke) -> Vec<Reach> {
    let around = |spot: Spot, sideways: f64, upright: f64| Reach {
        spot,
        room: [sideways, sideways, upright, upright],
    };
    match &stroke.shape {
        Shape::Line { from, to, .. } => vec![around(*from, 0.6, 0.6), around(*to, 0.6, 0.6)],
        Shape::Arrow { acts, from, to, .. } => {
            let mut reaches = vec![around(*from, 0.6, 0.6), around(*to, 0.6, 0.6)];
            // The head of an arrow that stands aside comes beyond its lead on any grid.
            if super::strokes::stands_aside(*acts, *from) {
                let beyond = from.moved_rows(from.rows - acts.rows);
                reaches.push(around(beyond, 0.6, 0.6));
            }
            reaches
        }
        Shape::Dimension { from, to } => vec![around(*from, 1.0, 0.6), around(*to, 1.0, 0.6)],
        Shape::Arc {
            centre,
            radius,
            from,
            sweep,
        } => [0.0, 0.25, 0.5, 0.75, 1.0]
            .map(|share| {
                let out = Vector::at_angle(from + sweep * share) * *radius;
                around(centre.moved(out), 0.5, 0.5)
            })
            .to_vec(),
        Shape::RightAngle {
            corner,
            along,
            across,
        } => vec![around(corner.moved(*along + *across), 0.5, 0.5)],
        Shape::Spread {
            from,
            to,
            first,
            last,
        } => [*from, *to, top_of(*from, *first), top_of(*to, *last)]
            .map(|spot| around(spot, 0.6, 0.6))
            .to_vec(),
        Shape::Turn { centre, middle, .. } => [-TURNED, 0.0, TURNED]
            .map(|aside| centre.moved(Vector::at_angle(middle + aside) * TURN))
            .map(|spot| around(spot, 0.6, 0.6))
            .to_vec(),
        Shape::Face { at, looks, half } => {
            let side = Vector::at_angle(*looks).quarter_turn() * *half;
            vec![
                around(at.moved(side), 0.7, 0.6),
                around(at.moved(side * -1.0), 0.7, 0.6),
            ]
        }
        Shape::Box(spot) => vec![Reach {
            spot: *spot,
            room: [2.0, 2.0, 0.5, 2.0],
        }],
        Shape::Standing { at, .. } => vec![Reach {
            spot: *at,
            room: [2.0, 2.0, 3.0, 0.5],
        }],
        Shape::Hinge(spot)
        | Shape::Stand(spot)
        | Shape::Wheel(spot)
        | Shape::Knot(spot)
        | Shape::Ring(spot) => vec![around(*spot, 0.6, 0.6)],
    }
}

/// The room of a label where it had best stand; none for one that stands on its line.
fn label_reach(label: &Label) -> Option<Reach> {
    let spot = *label.anchors.first()?;
    let wide = width(&label.text) as f64;
    let Vector { x, y } = label.lean;
    if label.on.is_some() {
        return Some(Reach {
            spot,
            room: [wide / 2.0, wide / 2.0, 0.5, 0.5],
        });
    }
    // What may stand on any side needs no room of its own.
    if x == 0.0 && y == 0.0 {
        return None;
    }
    let (left, right) = if x > 0.6 {
        (0.0, wide + 1.4)
    } else if x < -0.6 {
        (wide + 1.4, 0.0)
    } else {
        let lean = x / 0.6;
        (
            (wide / 2.0 + 1.0) * (1.0 - lean),
            (wide / 2.0 + 1.0) * (1.0 + lean),
        )
    };
    let (up, down) = if y > 0.4 {
        (1.6, 0.0)
    } else if y < -0.4 {
        (0.0, 1.6)
    } else {
        (0.5, 0.5)
    };
    let reach = Reach {
        spot,
        room: [left, right, up, down],
    };
    reach.is_sound().then_some(reach)
}
