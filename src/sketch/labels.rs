//! A place for every label: near what it names, over nothing that must stay visible.

use super::canvas::{Canvas, Held, floor};
use super::fit::{ASPECT, Fit};
use super::letters::{is_plain, shown, width};
use super::picture::{LegendEntry, PlacedLabel};
use super::scene::{Label, Shape, Spot};
use super::sector::{self, Laid, Measure};
use super::{Ink, Scene, Stroke};
use crate::plane::Vector;

/// Above this cost a place is worse than the legend.
const DEAREST: f64 = 4.2;

/// What it costs to touch a stroke, or a help line, at either end.
const TOUCHES: (f64, f64) = (0.8, 0.4);
/// The same for the label of an angle, which must stay at its arc, often between two lines.
const ANGLE_TOUCHES: (f64, f64) = (0.5, 0.3);

/// What it costs the label of an angle to stand on the other side of the body than its arc.
const BEHIND_BODY: f64 = 1.2;

/// Rows by which a label is nearer to what it names than to the head of an arrow that another
/// names.
pub(super) const CLEARLY: f64 = 0.1;

/// The heads of a scene's arrows.
pub(super) fn heads(scene: &Scene) -> Vec<Spot> {
    let head = |stroke: &Stroke| match stroke.shape {
        Shape::Arrow { to, .. } => Some(to),
        _ => None,
    };
    scene.strokes.iter().filter_map(head).collect()
}

/// Rows from what it names beyond which the label of an angle had rather be its bare name.
const FAR: f64 = 1.4;
/// Rows by which the bare name must be nearer.
const NEARER: f64 = 0.4;

/// A label on the grid.
struct Wanted {
    text: String,
    /// The name alone, for an angle whose value stands among the names too.
    short: Option<String>,
    ink: Ink,
    /// Cells it may stand at, as column and row.
    anchors: Vec<(i64, i64)>,
    lean: Vector,
    /// Cells of the line that it may stand on; 0 where there is none.
    line: i64,
    /// The most cells of that line it may cover.
    cover: i64,
    /// True where the first of its anchors is the head of an arrow.
    at_head: bool,
    /// The dimension line that it names.
    measures: Option<Measure>,
    /// The angle that it names.
    angle: Option<Laid>,
}

/// Where a label is to stand.
#[derive(Clone, Copy, Debug)]
struct Seat {
    column: i64,
    row: i64,
    cost: f64,
    /// True if it interrupts its own line.
    interrupts: bool,
    /// True for the whole text, false for a mark that the legend explains.
    whole: bool,
    /// Rows from what it names; more where the body stands between.
    off: f64,
}

/// Places the labels of a scene on the canvas; what finds no place goes to the legend.
pub(super) fn place(
    canvas: &mut Canvas,
    scene: &Scene,
    fit: &Fit,
) -> (Vec<PlacedLabel>, Vec<LegendEntry>) {
    let heads = heads(scene);
    let wanted: Vec<Wanted> = scene
        .labels
        .iter()
        .map(|label| Wanted {
            at_head: heads.contains(&label.anchors[0]),
            ..on_grid(label, fit, canvas.unicode)
        })
        .collect();
    let order = best_order(canvas, &wanted);
    let mut placed = Vec::new();
    let mut left_over = Vec::new();
    for index in order {
        let label = &wanted[index];
        match best_seat(canvas, &wanted, index) {
            Some((seat, text)) => placed.push(write(canvas, label, text, seat)),
            None => left_over.push(index),
        }
    }
    left_over.sort_unstable();
    let mut marks = ('a'..='z')
        .map(String::from)
        .filter(|mark| wanted.iter().all(|label| label.text != *mark));
    let mut legend = Vec::new();
    for index in left_over {
        let label = &wanted[index];
        let mark = marks.next().unwrap_or_default();
        let seat = if mark.is_empty() {
            None
        } else {
            seat(canvas, &wanted, index, &mark)
        };
        let mark = match seat {
            Some(seat) => {
                placed.push(write(canvas, label, &mark, seat));
                mark
            }
            None => String::new(),
        };
        legend.push(LegendEntry {
            mark,
            text: label.text.clone(),
            ink: label.ink,
        });
    }
    (placed, legend)
}

/// A label that stands beside the picture without a mark in it.
pub(super) fn beside(label: &Label, unicode: bool) -> LegendEntry {
    LegendEntry {
        mark: String::new(),
        text: shown(&label.text, unicode),
        ink: label.ink,
    }
}

fn on_grid(label: &Label, fit: &Fit, unicode: bool) -> Wanted {
    let cell = |spot| {
        let point = fit.point(spot);
        (floor(point.column), floor(point.row))
    };
    let (line, cover) = label.on.map_or((0, 0), |(from, to)| {
        let (from, to) = (cell(from), cell(to));
        let line = (from.0 - to.0).abs().max((from.1 - to.1).abs()).max(1);
        // A level line keeps a dash at each end, a slanted one keeps half its length.
        (line, if from.1 == to.1 { line - 5 } else { line / 2 })
    });
    Wanted {
        text: shown(&label.text, unicode),
        short: short(label, unicode),
        ink: label.ink,
        anchors: label.anchors.iter().copied().map(cell).collect(),
        lean: label.lean,
        line,
        cover,
        at_head: false,
        measures: label.on.map(|ends| sector::measure(fit, ends)),
        angle: label.angle.map(|angle| Laid::of(&angle, fit)),
    }
}

/// The order in which most labels find a place: those left without go first the next time.
fn best_order(canvas: &Canvas, wanted: &[Wanted]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    let mut best = (usize::MAX, order.clone());
    for _ in 0..5 {
        let mut trial = canvas.clone();
        let mut failed = Vec::new();
        for &index in &order {
            let label = &wanted[index];
            match best_seat(&trial, wanted, index) {
                Some((seat, text)) => {
                    write(&mut trial, label, text, seat);
                }
                None => failed.push(index),
            }
        }
        if failed.len() < best.0 {
            best = (failed.len(), order.clone());
        }
        if failed.is_empty() {
            break;
        }
        order.retain(|index| !failed.contains(index));
        failed.extend(order);
        order = failed;
    }
    best.1
}

/// The name of an angle without its value; `None` for what has no value and for all else.
pub(super) fn short(label: &Label, unicode: bool) -> Option<String> {
    let (name, value) = (label.text.rsplit_once(" = ")).or(label.text.split_once(' '))?;
    let bare = label.ink == Ink::Angle && value != "?";
    bare.then(|| shown(name, unicode))
}

/// Where a label stands and with which text: an angle far from its arc leaves its value out.
fn best_seat<'a>(canvas: &Canvas, wanted: &'a [Wanted], index: usize) -> Option<(Seat, &'a str)> {
    let label = &wanted[index];
    let full = seat(canvas, wanted, index, &label.text);
    let Some(name) = label.short.as_deref() else {
        return full.map(|seat| (seat, &*label.text));
    };
    let near = full.filter(|seat| seat.off <= FAR);
    if let Some(seat) = near {
        return Some((seat, &label.text));
    }
    let brief = seat(canvas, wanted, index, name)
        .filter(|brief| full.is_none_or(|full| brief.off + NEARER < full.off));
    (brief.map(|seat| (seat, name))).or(full.map(|seat| (seat, &*label.text)))
}

/// The cheapest seat for a text at a label's anchors.
fn seat(canvas: &Canvas, wanted: &[Wanted], index: usize, text: &str) -> Option<Seat> {
    if !is_plain(text) {
        return None;
    }
    let wide = width(text) as i64;
    let mut best: Option<Seat> = None;
    for (rank, &(column, row)) in wanted[index].anchors.iter().enumerate() {
        // Anchors far off the grid have no seat near them.
        if column.abs() > 4000 || row.abs() > 4000 {
            continue;
        }
        for at_row in row - 4..=row + 4 {
            for at_column in column - wide - 7..=column + 7 {
                let seat = Seat {
                    column: at_column,
                    row: at_row,
                    cost: 0.35 * rank as f64,
                    interrupts: false,
                    whole: text == wanted[index].text
                        || wanted[index].short.as_deref() == Some(text),
                    off: 0.0,
                };
                let tried = tried(canvas, wanted, index, (column, row), seat, wide);
                let dearest = best.map_or(DEAREST, |seat| seat.cost);
                best = tried
                    .filter(|seat| seat.cost < dearest)
                    .filter(|_| names_its_own(canvas, wanted, index, ((at_column, at_row), wide)))
                    .or(best);
            }
        }
    }
    best
}

/// True if nobody would take a text for the name of another angle, or of another length.
fn names_its_own(canvas: &Canvas, wanted: &[Wanted], index: usize, text: sector::Text) -> bool {
    let label = &wanted[index];
    if let Some(own) = label.measures {
        return sector::is_at(own, wanted.iter().filter_map(|other| other.measures), text);
    }
    let Some(own) = label.angle else {
        return true;
    };
    let others = wanted.iter().enumerate().filter(|(rank, _)| *rank != index);
    let taken = (others.filter_map(|(_, other)| other.angle.as_ref()))
        .any(|other| own.is_taken_for(other, text));
    // Neither a force nor a rope or the body runs between it and its arc.
    let line = |(column, row)| {
        let held = canvas.held(column, row) == Held::Hard;
        held && !matches!(canvas.ink(column, row), Ink::Angle | Ink::Ground)
    };
    own.faces(text) && !taken && !between(text.0, text.1, own.nearest(text)).any(line)
}

/// The seat with what it costs; `None` where it would cover what must stay visible.
fn tried(
    canvas: &Canvas,
    wanted: &[Wanted],
    index: usize,
    anchor: (i64, i64),
    seat: Seat,
    wide: i64,
) -> Option<Seat> {
    let label = &wanted[index];
    let (crowding, interrupts) = covering(canvas, label, seat, wide)?;
    let mut cost = seat.cost + crowding;
    let gap = gap(seat, wide, anchor);
    let at = (seat.column, seat.row);
    if label.line == 0 && is_cut_off(canvas, at, (wide, label.ink), anchor) {
        return None;
    }
    let mut behind = 0.0;
    if label.ink == Ink::Angle {
        let body = |(column, row)| canvas.ink(column, row) == Ink::Body;
        if between(at, wide, anchor).any(body) {
            cost += BEHIND_BODY;
            behind = BEHIND_BODY;
        }
    }
    let centre = Vector::new(
        (seat.column as f64 + (wide - 1) as f64 / 2.0 - anchor.0 as f64) / ASPECT,
        (anchor.1 - seat.row) as f64,
    );
    if label.line > 0 {
        // On its line, or as near as may be.
        cost += 0.9 * centre.y.abs() + 0.12 * centre.x.abs();
    } else {
        let size = centre.size().max(0.1);
        cost += 1.5 * (label.lean.size() - centre.dot(label.lean) / size);
        cost += if gap < 1.0 {
            1.0 - gap
        } else {
            0.9 * (gap - 1.0)
        };
    }
    // A label nearer to another's anchor than to its own misleads; a mark of the legend may.
    let own = (label.anchors.iter())
        .map(|anchor| self::gap(seat, wide, *anchor))
        .fold(gap, f64::min);
    for (other, rival) in wanted.iter().enumerate() {
        if other != index
            && rival.line == 0
            && label.line == 0
            && let Some(&first) = rival.anchors.first()
        {
            let theirs = self::gap(seat, wide, first);
            // An angle is taken for the name of an arrow only right before its head.
            let angle = label.ink == Ink::Angle;
            let before = rival.at_head && is_before(first, (seat.column, seat.row), wide);
            let clearly = if rival.at_head && !angle {
                CLEARLY
            } else {
                -1e-9
            };
            if angle && before && seat.whole {
                return None;
            }
            if theirs < own + clearly && seat.whole {
                return None;
            } else if theirs < gap {
                cost += 2.5 + gap - theirs;
            } else if theirs < gap + 0.4 {
                cost += 0.8 + gap - theirs;
            }
        }
    }
    Some(Seat {
        cost,
        interrupts,
        off: self::gap(seat, wide, label.anchors[0]) + behind,
        ..seat
    })
}

/// True if a text stands right above or below the head of an arrow.
pub(super) fn is_before(head: (i64, i64), (first, row): (i64, i64), wide: i64) -> bool {
    (head.1 - row).abs() == 1 && (first..first + wide).contains(&head.0)
}

/// True if a line of something else runs between a text and what it names.
pub(super) fn is_cut_off(
    canvas: &Canvas,
    (first, row): (i64, i64),
    (wide, ink): (i64, Ink),
    anchor: (i64, i64),
) -> bool {
    between((first, row), wide, anchor).any(|(column, row)| match canvas.held(column, row) {
        Held::Soft => true,
        Held::Hard => {
            let other = canvas.ink(column, row);
            other != ink && matches!(other, Ink::Angle | Ink::Rope | Ink::Load)
        }
        // Another's name between would be taken for its own.
        Held::Label => true,
        Held::Free => false,
    })
}

/// The cells between a text and a cell that it may name.
fn between(
    (first, row): (i64, i64),
    wide: i64,
    anchor: (i64, i64),
) -> impl Iterator<Item = (i64, i64)> {
    let near = anchor.0.clamp(first, first + wide - 1);
    let (aside, down) = (near - anchor.0, row - anchor.1);
    let steps = aside.abs().max(down.abs());
    (1..steps).map(move |step| {
        let at = |whole: i64| (whole * step + whole.signum() * steps / 2) / steps;
        (anchor.0 + at(aside), anchor.1 + at(down))
    })
}

/// How far a seat is from a cell, in rows.
fn gap(seat: Seat, wide: i64, (column, row): (i64, i64)) -> f64 {
    let aside = (seat.column - column)
        .max(column - (seat.column + wide - 1))
        .max(0);
    libm::hypot(aside as f64 / ASPECT, (seat.row - row) as f64)
}

/// What covering and crowding cost, and whether the label's own line is interrupted; `None` where it must not be.
fn covering(canvas: &Canvas, label: &Wanted, seat: Seat, wide: i64) -> Option<(f64, bool)> {
    if seat.column < 0 || seat.column + wide > canvas.columns() {
        return None;
    }
    let mut cost = 0.0;
    let mut covered = 0;
    for column in seat.column..seat.column + wide {
        match canvas.held(column, seat.row) {
            Held::Free => {}
            Held::Soft
                if is_dimension(canvas, column, seat.row)
                    && (label.measures)
                        .is_some_and(|own| sector::is_on(own, (column, seat.row))) =>
            {
                covered += 1;
            }
            // What it names would be cut in two by another's label.
            Held::Soft => return None,
            Held::Hard | Held::Label => return None,
        }
    }
    // A line must stay a line, with both its ends.
    let cuts_end =
        (seat.column - 1..=seat.column + wide).any(|column| is_end(canvas, column, seat.row));
    if covered > 0 && (covered > label.cover || cuts_end) {
        return None;
    }
    let touches = match label.ink {
        Ink::Angle => ANGLE_TOUCHES,
        _ => TOUCHES,
    };
    for column in [seat.column - 1, seat.column + wide] {
        if (0..canvas.columns()).contains(&column) {
            match canvas.held(column, seat.row) {
                Held::Label => return None,
                Held::Hard => cost += touches.0,
                // It would read as the end of that line.
                Held::Soft if label.line == 0 && is_dimension(canvas, column, seat.row) => {
                    return None;
                }
                Held::Soft if covered == 0 => cost += touches.1,
                Held::Free | Held::Soft => {}
            }
        }
    }
    Some((cost, covered > 0))
}

fn is_dimension(canvas: &Canvas, column: i64, row: i64) -> bool {
    canvas.ink(column, row) == Ink::Distance && canvas.held(column, row) == Held::Soft
}

fn is_end(canvas: &Canvas, column: i64, row: i64) -> bool {
    is_dimension(canvas, column, row)
        && matches!(canvas.glyph(column, row), Some('├' | '┤' | '|' | '+'))
}

/// Writes a text at its seat.
fn write(canvas: &mut Canvas, label: &Wanted, text: &str, seat: Seat) -> PlacedLabel {
    let wide = width(text) as i64;
    for column in [seat.column - 1, seat.column + wide] {
        if seat.interrupts && canvas.held(column, seat.row) == Held::Soft {
            canvas.clear(column, seat.row);
        }
    }
    for (aside, glyph) in text.chars().enumerate() {
        let column = seat.column + aside as i64;
        canvas.put(column, seat.row, glyph, label.ink, Held::Label);
    }
    PlacedLabel {
        text: text.to_owned(),
        column: seat.column as u16,
        row: seat.row as u16,
        ink: label.ink,
    }
}
