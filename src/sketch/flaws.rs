//! What may be wrong with a picture, for the tests that look for it.

use super::canvas::{Canvas, Held, floor};
use super::fit::{ASPECT, Fit};
use super::letters::{shown, width};
use super::picture::{PlacedLabel, roomed};
use super::{Ink, Picture, Scene, strokes};

/// Something wrong with a picture. Each names the label that it is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Flaw {
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
}

/// Everything that is wrong with a picture of a scene.
pub(crate) fn flaws(scene: &Scene, picture: &Picture, unicode: bool) -> Vec<Flaw> {
    let mut flaws = Vec::new();
    let scene = &roomed(scene, picture.columns, picture.rows);
    let mut bare = Canvas::new(picture.columns, picture.rows, unicode);
    let fit = Fit::of(scene, picture.columns, picture.rows);
    if let Some(fit) = &fit {
        strokes::draw(&mut bare, scene, fit);
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
        }
    }
    let told = |text: &str| {
        (picture.labels.iter().map(|label| &label.text))
            .chain(picture.legend.iter().map(|entry| &entry.text))
            .filter(|told| **told == text)
            .count()
    };
    for label in &scene.labels {
        let text = shown(&label.text, unicode);
        let wanted = (scene.labels.iter())
            .filter(|other| shown(&other.text, unicode) == text)
            .count();
        if told(&text) < wanted {
            flaws.push(Flaw::Lost(text));
        }
    }
    flaws
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
}

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
    let named = |text: &str| shown(text, unicode) == label.text;
    let own = (scene.labels.iter())
        .filter(|other| named(&other.text) && other.on.is_none())
        .flat_map(|other| other.anchors.iter().map(|anchor| gap(cell(*anchor))))
        .fold(f64::INFINITY, f64::min);
    if own == f64::INFINITY {
        return None;
    }
    let rival = scene.labels.iter().find(|other| {
        !named(&other.text) && other.on.is_none() && gap(cell(other.anchors[0])) < own - 1e-9
    })?;
    Some(Flaw::Ambiguous(label.text.clone(), rival.text.clone()))
}
