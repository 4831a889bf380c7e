//! One straight body of a problem of bodies in general, as a drawing needs it.

use super::scene::{Scene, Stroke};
use super::{Ink, Marks, Told};
use crate::plane::Vector;
use crate::problem::{ForceId, GivenId, LoadKind, Place, Problem};
use crate::units::Dimension;
use std::collections::BTreeMap;

/// A straight body with its forces, fit to be drawn like that of a lesson.
///
/// Its places and directions stand in a [`Problem`] that is drawn and never worked; what no lesson
/// has is beside it.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// The body, with a force for each thing that acts on it.
    pub(super) problem: Problem,
    /// The values of its givens, and behind them those that are printed nowhere.
    pub(super) values: Vec<f64>,
    /// What looks unlike anything in a lesson.
    pub(super) guises: BTreeMap<ForceId, Guise>,
    /// Given angles that no direction of a lesson is told by.
    pub(super) arcs: Vec<GivenArc>,
    /// Given lengths off the body.
    pub(super) spans: Vec<GivenSpan>,
    /// What acts, by name.
    pub(super) entries: Vec<Entry>,
}

/// What is drawn of something that acts.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// The arrow.
    pub force: ForceId,
    /// The name of what acts, as shown.
    pub symbol: String,
    /// Which part of it the arrow is.
    pub share: Share,
}

/// Which part of what acts an arrow is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Share {
    /// The force, or a contact's push.
    Whole,
    /// The friction of a contact.
    Friction,
    /// A couple: its direction is a quarter turn, up for anticlockwise.
    Couple,
}

/// How something looks in the scene that no lesson has.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Guise {
    /// A load spread along the body.
    Spread(Spread),
    /// A couple, and which way it turns if that is given: +1 anticlockwise.
    Couple(Option<f64>),
    /// A mass of which it is not told whether it hangs or stands.
    Mass,
    /// A face that touches the body.
    Contact,
    /// A peg, without a face behind it.
    Peg,
    /// A strut, of which perhaps the other end is told, from the foot of the body.
    Strut(Vector, Option<Vector>),
    /// A rope whose other end is told, from the foot of the body.
    Tied(Vector),
    /// Part of a hold that is drawn already.
    Beside,
}

/// A load spread along the body.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Spread {
    /// Where it begins and ends.
    pub(super) ends: [Place; 2],
    /// Which way it acts.
    pub(super) acts: Vector,
    /// Its values at both ends, as shares of the largest.
    pub(super) shares: [f64; 2],
    /// What stands at both ends; the second is empty where it is even.
    pub(super) texts: [String; 2],
}

/// A given angle at a place, between two directions.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct GivenArc {
    pub(super) at: Place,
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) text: String,
}

/// A given length between two points off the body, from its foot.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct GivenSpan {
    pub(super) from: Vector,
    pub(super) to: Vector,
    pub(super) text: String,
}

impl Sheet {
    /// A problem of one straight body that has no guided working, as it stands.
    pub fn of_problem(problem: &Problem) -> Sheet {
        let entries = problem.forces().into_iter().map(|force| Entry {
            force: force.id,
            symbol: force.symbol.shown(),
            share: Share::Whole,
        });
        Sheet {
            values: problem.values(),
            entries: entries.collect(),
            problem: problem.clone(),
            guises: BTreeMap::new(),
            arcs: Vec::new(),
            spans: Vec::new(),
        }
    }

    /// The drawing with these marks, and nothing beyond them.
    pub fn scene(&self, marks: &Marks) -> Scene {
        super::scene::of_sheet(self, marks)
    }

    /// The forces of the drawing with these marks in words. The scene is told by itself.
    pub fn tell(&self, marks: &Marks) -> Vec<Told> {
        super::tell::of_sheet(self, marks)
    }

    /// What acts.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The given force or couple of this size.
    pub fn sized_by(&self, size: GivenId) -> Option<ForceId> {
        let is_it =
            |load: &LoadKind| matches!(load, LoadKind::Force { size: own, .. } if *own == size);
        let index = self
            .problem
            .loads()
            .iter()
            .position(|load| is_it(&load.kind))?;
        Some(ForceId::Load(index))
    }

    /// The given distances along the body, each by a force at which it ends, with what stands there.
    pub fn distances(&self) -> Vec<(ForceId, String)> {
        let forces = self.problem.forces();
        let given = forces.iter().filter_map(|force| match force.at {
            Place::At(given) => Some((force.id, self.text(given))),
            _ => None,
        });
        given.filter(|(_, text)| !text.is_empty()).collect()
    }

    /// True if the body is not level.
    pub fn is_tilted(&self) -> bool {
        let tip = self.problem.point(Place::Tip, &self.values);
        tip.y.abs() > 1e-3 * tip.size()
    }

    /// The given lengths along the body and angles that are labelled in the scene.
    pub fn labelled(&self) -> Vec<String> {
        let scene = self.scene(&Marks {
            givens: true,
            ..Marks::default()
        });
        let texts: Vec<String> = scene.labels.into_iter().map(|label| label.text).collect();
        let kinds = [Dimension::LENGTH, Dimension::ANGLE];
        let givens = self.problem.givens().iter().enumerate();
        let kept = givens.filter(|(_, given)| kinds.contains(&given.dimension));
        let kept = kept.map(|(index, _)| self.text(GivenId(index)));
        kept.filter(|text| texts.contains(text)).collect()
    }

    /// "θ = 35°"; the name alone of what is sought, nothing for a number that is printed nowhere.
    pub(super) fn text(&self, id: GivenId) -> String {
        text(&self.problem, id)
    }

    /// Places of the body at which nothing else stands: where spread loads begin and end.
    pub(super) fn places(&self) -> impl Iterator<Item = Place> + '_ {
        self.guises.values().flat_map(|guise| match guise {
            Guise::Spread(spread) => spread.ends.to_vec(),
            _ => Vec::new(),
        })
    }
}

/// "θ = 35°"; the name alone of what is sought, nothing for a number that is printed nowhere.
pub(super) fn text(problem: &Problem, id: GivenId) -> String {
    let given = problem.givens().get(id.0);
    given.map_or_else(String::new, |given| match given.written.is_empty() {
        true => given.symbol.shown(),
        false => format!("{} = {}", given.symbol, given.written),
    })
}

/// Puts a stroke of the scene in the background.
pub(super) fn faint(stroke: &mut Stroke) {
    if matches!(
        stroke.ink,
        Ink::Ground | Ink::Rope | Ink::Weight | Ink::Load
    ) {
        stroke.ink = Ink::Faint;
    }
}
