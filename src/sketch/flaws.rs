//! What may be wrong with a picture, for the tests that look for it.

use super::canvas::{Canvas, Held, floor};
use super::clear::{self, Clash};
use super::fit::{ASPECT, Fit};
use super::letters::{shown, width};
use super::picture::{PlacedLabel, laid_out};
use super::{Ink, Label, Picture, Scene, Shape, Spot, Stroke, labels, sector, strokes};

/// Something wrong with a picture. Each names the label or the arrow that it is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Flaw {
    /// It goes over the edge.
    Cut(String),
    /// Something is drawn over it.
    DrawnOver(String),
    /// It covers a stroke that must stay visible.
    Covers(String),
    /// It covers a help line or a dimension line that is not its own.
    CoversLine(String),
    /// It runs into another.
    RunsInto(String, String),
    /// It is nearer to what another names than to what it names itself.
    Ambiguous(String, String),
    /// It is neither in the picture nor in the legend.
    Lost(String),
    /// A line runs between it and what it names.
    Across(String),
    /// The arrow ends off the point at which it acts.
    Apart(Ink, (i64, i64)),
    /// The arrow's head is hidden.
    Headless(Ink, (i64, i64)),
    /// Two arrows lie on each other.
    Merged(Ink, Ink),
    /// Two arrows show one force.
    Twice(Ink, Ink),
    /// The head of the first arrow stands in the shaft of the second.
    StandsIn(Ink, Ink),
    /// An arrow of this ink runs through the arc of an angle that is not its own.
    Crossed(Ink, (i64, i64)),
    /// It touches a dimension line that is not its own.
    Touches(String),
    /// It stands at the head of the arrow that another names, as near as at its own.
    UnderHead(String, String),
    /// It names an angle, and would be taken for the name of another.
    TakenFor(String, String),
    /// It names a length, and does not stand at its line.
    OffLine(String),
    /// The arrow of this ink is hardly more than its head.
    Shaftless(Ink, (i64, i64)),
}

/// Everything that is wrong with a picture of a scene.
pub fn flaws(scene: &Scene, picture: &Picture, unicode: bool) -> Vec<Flaw> {
    let mut flaws = Vec::new();
    let asked = scene;
    let (scene, fit) = laid_out(asked, picture.columns, picture.rows);
    let scene = &scene;
    let mut bare = Canvas::new(picture.columns, picture.rows, unicode);
    if let Some(fit) = &fit {
        strokes::draw(&mut bare, scene, fit);
        flaws.extend(arrow_flaws(scene, picture, fit));
        flaws.extend(between_arrows(scene, fit));
    }
    for (index, label) in picture.labels.iter().enumerate() {
        covering(picture, &bare, label, &mut flaws);
        let wide = width(&label.text) as u16;
        for other in &picture.labels[index + 1..] {
            let apart = label.row != other.row
                || label.column + wide < other.column
                || other.column + (width(&other.text) as u16) < label.column;
            if !apart {
                flaws.push(Flaw::RunsInto(label.text.clone(), other.text.clone()));
            }
        }
        if let Some(fit) = &fit {
            flaws.extend(ambiguous(scene, fit, label, unicode));
            flaws.extend(cut_off(scene, fit, label, &bare));
            flaws.extend(taken_for(scene, fit, label, unicode));
        }
    }
    for label in &asked.labels {
        let told = (picture.labels.iter().map(|label| &label.text))
            .chain(picture.legend.iter().map(|entry| &entry.text))
            .filter(|told| says(told, label, unicode))
            .count();
        let text = shown(&label.text, unicode);
        let wanted = (asked.labels.iter())
            .filter(|other| shown(&other.text, unicode) == text)
            .count();
        if told < wanted {
            flaws.push(Flaw::Lost(text));
        }
    }
    flaws
}

/// True if a text is that of a label, or the name alone of an angle.
fn says(text: &str, label: &Label, unicode: bool) -> bool {
    shown(&label.text, unicode) == text || labels::short(label, unicode).as_deref() == Some(text)
}

fn covering(picture: &Picture, bare: &Canvas, label: &PlacedLabel, flaws: &mut Vec<Flaw>) {
    let text = || label.text.clone();
    let wide = width(&label.text) as u16;
    if label.column + wide > picture.columns || label.row >= picture.rows {
        flaws.push(Flaw::Cut(text()));
    }
    let mut covers = None;
    for (aside, glyph) in label.text.chars().enumerate() {
        let column = label.column + aside as u16;
        if picture.cell(column, label.row).glyph != glyph {
            flaws.push(Flaw::DrawnOver(text()));
        }
        let (column, row) = (i64::from(column), i64::from(label.row));
        match bare.held(column, row) {
            Held::Hard => covers = Some(Flaw::Covers(text())),
            // A distance may stand on its own line.
            Held::Soft if label.ink != Ink::Distance || bare.ink(column, row) != Ink::Distance => {
                covers = covers.or(Some(Flaw::CoversLine(text())));
            }
            _ => {}
        }
    }
    flaws.extend(covers);
    let (first, row) = (i64::from(label.column), i64::from(label.row));
    let beside = [first - 1, first + i64::from(wide)];
    let touches = |column: &i64| {
        // What is written in a dimension line clears a cell beside it.
        let shown = picture.cell((*column).max(0) as u16, label.row);
        bare.held(*column, row) == Held::Soft && shown.ink == Ink::Distance
    };
    if label.ink != Ink::Distance && beside.iter().any(touches) {
        flaws.push(Flaw::Touches(text()));
    }
}

/// True where a line runs between a label and each of the spots that it may name.
fn cut_off(scene: &Scene, fit: &Fit, label: &PlacedLabel, bare: &Canvas) -> Option<Flaw> {
    let named = |other: &&Label| says(&label.text, other, bare.unicode);
    let own = scene.labels.iter().find(named)?;
    let size = (width(&label.text) as i64, label.ink);
    let cut = |anchor: &Spot| {
        let point = fit.point(*anchor);
        let anchor = (floor(point.column), floor(point.row));
        let at = (i64::from(label.column), i64::from(label.row));
        labels::is_cut_off(bare, at, size, anchor)
    };
    (own.on.is_none() && own.anchors.iter().all(cut)).then(|| Flaw::Across(label.text.clone()))
}

/// True where a label would be taken for that of another angle, or of another length.
fn taken_for(scene: &Scene, fit: &Fit, label: &PlacedLabel, unicode: bool) -> Option<Flaw> {
    let wide = width(&label.text) as i64;
    let text = ((i64::from(label.column), i64::from(label.row)), wide);
    let (mut own, others): (Vec<&Label>, Vec<&Label>) =
        (scene.labels.iter()).partition(|other| says(&label.text, other, unicode));
    own.retain(|own| own.ink == label.ink);
    let laid = |label: &Label| (label.angle.as_ref()).map(|angle| sector::Laid::of(angle, fit));
    let measure = |label: &Label| label.on.map(|ends| sector::measure(fit, ends));
    let rival = |own: &&Label| {
        let own = laid(own)?;
        let taken =
            |other: &&&Label| laid(other).is_some_and(|other| own.is_taken_for(&other, text));
        others.iter().find(taken).copied()
    };
    let off = |own: &&Label| {
        let lines = others.iter().filter_map(|other| measure(other));
        measure(own).is_some_and(|own| !sector::is_at(own, lines, text))
    };
    if !own.is_empty() && own.iter().all(off) {
        return Some(Flaw::OffLine(label.text.clone()));
    }
    let rivals: Option<Vec<&Label>> = own.iter().map(rival).collect();
    let rival = rivals?.into_iter().next()?;
    Some(Flaw::TakenFor(label.text.clone(), rival.text.clone()))
}

/// Rows below which an arrow is hardly more than its head.
const SHAFT: f64 = 1.2;
/// Rows of a grid below which no arrow has room.
const LEAST_ROWS: u16 = 12;

/// Columns and rows from a point within which an arrow touches it.
const TOUCH: (i64, i64) = (2, 1);

/// What is wrong with the arrows.
fn arrow_flaws(scene: &Scene, picture: &Picture, fit: &Fit) -> Vec<Flaw> {
    let mut flaws = Vec::new();
    let cell = |spot: Spot| {
        let point = fit.point(spot);
        (floor(point.column), floor(point.row))
    };
    let arrows: Vec<(&Stroke, Spot, Spot, Spot)> = (scene.strokes.iter())
        .filter_map(|stroke| match stroke.shape {
            Shape::Arrow { acts, from, to, .. } => Some((stroke, acts, from, to)),
            _ => None,
        })
        .collect();
    let mut heads = Vec::new();
    for (index, (stroke, acts, from, to)) in arrows.iter().enumerate() {
        let ink = stroke.ink;
        let (point, tail, head) = (cell(*acts), cell(*from), cell(*to));
        let near = |one: (i64, i64)| {
            (one.0 - point.0).abs() <= TOUCH.0 && (one.1 - point.1).abs() <= TOUCH.1
        };
        let joined = strokes::stands_aside(*acts, *from);
        if !(near(tail) || near(head) || joined) {
            flaws.push(Flaw::Apart(ink, point));
        }
        // The force and its component of the same direction are one arrow; a lit one is drawn
        // over its own.
        // A component may have no length.
        let (start, end) = (fit.point(*from), fit.point(*to));
        if (start.column - end.column).abs() + (start.row - end.row).abs() < 1e-6 {
            continue;
        }
        let long = libm::hypot((start.column - end.column) / ASPECT, start.row - end.row);
        if long < SHAFT
            && !joined
            && picture.rows >= LEAST_ROWS
            && ink != Ink::Component
            && ink != Ink::Lit
        {
            flaws.push(Flaw::Shaftless(ink, head));
        }
        let same = (arrows[..index].iter()).any(|other| other.1 == *acts && other.3 == *to);
        let shows = |column: i64, row: i64| {
            let shown = picture.cell(column.max(0) as u16, row.max(0) as u16);
            shown.ink == ink && HEADS.contains(shown.glyph)
        };
        let off = |cell: &(i64, i64)| (cell.0 - head.0).abs() + 2 * (cell.1 - head.1).abs();
        let found = (-1..=1)
            .flat_map(|down| (-2..=2).map(move |aside| (head.0 + aside, head.1 + down)))
            .filter(|cell| shows(cell.0, cell.1) && !heads.contains(cell))
            .min_by_key(off);
        match found {
            Some(cell) => heads.push(cell),
            None if same => {}
            None => flaws.push(Flaw::Headless(ink, head)),
        }
        for (other, _, far_tail, far_head) in &arrows[..index] {
            let (theirs, end) = (cell(*far_tail), cell(*far_head));
            let lies = tail.0 == head.0 && theirs.0 == end.0 && tail.0 == theirs.0;
            let overlap = tail.1.max(head.1).min(theirs.1.max(end.1))
                - tail.1.min(head.1).max(theirs.1.min(end.1));
            if lies && overlap > 1 && other.ink != Ink::Lit && ink != Ink::Lit {
                flaws.push(Flaw::Merged(other.ink, ink));
            }
        }
    }
    flaws
}

/// What is in each other's way, and arrows that show one force.
fn between_arrows(scene: &Scene, fit: &Fit) -> Vec<Flaw> {
    let ways = clear::Ways::of(scene, fit);
    let clash = |clash| match clash {
        Clash::StandsIn(one, other) => Flaw::StandsIn(one, other),
        Clash::Crossed(ink, at) => Flaw::Crossed(ink, at),
    };
    let mut flaws: Vec<Flaw> = ways.clashes(clear::ON).into_iter().map(clash).collect();
    for (rank, one) in ways.arrows.iter().enumerate() {
        for other in &ways.arrows[..rank] {
            let run = |arrow: &clear::Laid| {
                let run = arrow.ends.1 - arrow.ends.0;
                run * (1.0 / run.size())
            };
            let same = run(one).dot(run(other)) > 1.0 - 1e-6;
            let near = (one.ends.0 - other.ends.0).size() < 1.01;
            if same && near && one.stands.0 == other.stands.0 {
                flaws.push(Flaw::Twice(one.ink, other.ink));
            }
        }
    }
    flaws
}

/// Every sign of an arrowhead.
const HEADS: &str = "▶↗▲↖◀↙▼↘<>^v";

/// True where a label is nearer to another's first anchor than to any of its own.
fn ambiguous(scene: &Scene, fit: &Fit, label: &PlacedLabel, unicode: bool) -> Option<Flaw> {
    let cell = |spot| {
        let point = fit.point(spot);
        (floor(point.column), floor(point.row))
    };
    let gap = |(column, row): (i64, i64)| {
        let (first, last) = (
            i64::from(label.column),
            i64::from(label.column) + width(&label.text) as i64 - 1,
        );
        let aside = (first - column).max(column - last).max(0) as f64;
        libm::hypot(aside / ASPECT, (i64::from(label.row) - row) as f64)
    };
    let named = |other: &Label| says(&label.text, other, unicode);
    let own = (scene.labels.iter())
        .filter(|other| named(other) && other.on.is_none())
        .flat_map(|other| other.anchors.iter().map(|anchor| gap(cell(*anchor))))
        .fold(f64::INFINITY, f64::min);
    if own == f64::INFINITY {
        return None;
    }
    let nearer = |other: &&Label, than: f64| {
        !named(other) && other.on.is_none() && gap(cell(other.anchors[0])) < than
    };
    if let Some(rival) = scene.labels.iter().find(|other| nearer(other, own - 1e-9)) {
        return Some(Flaw::Ambiguous(label.text.clone(), rival.text.clone()));
    }
    let heads = labels::heads(scene);
    let at = (i64::from(label.column), i64::from(label.row));
    let too_near = |other: &&Label| match label.ink {
        Ink::Angle => labels::is_before(cell(other.anchors[0]), at, width(&label.text) as i64),
        _ => nearer(other, own + labels::CLEARLY),
    };
    let rival = (scene.labels.iter())
        .filter(|other| heads.contains(&other.anchors[0]) && !named(other))
        .find(too_near)?;
    Some(Flaw::UnderHead(label.text.clone(), rival.text.clone()))
}
