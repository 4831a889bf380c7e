//! The diagram beside the working, drawn to scale from the model.
//!
//! A [`Sheet`] is a straight body of a problem of bodies in general, laid open so that it can be
//! drawn like a lesson's.
//!
//! Two halves. [`scene`] turns a problem, its values and a list of [`Marks`] into strokes and
//! labels. [`picture`] lays a scene out on a grid of character cells of any size. [`tell`] says
//! the same marks in words, for those who listen to the screen.
//!
//! Nothing is drawn that the marks do not ask for, so the diagram never runs ahead of the
//! learner's working. Nothing here knows a terminal: a cell carries an [`Ink`], and the screen
//! decides which colour that is.

mod abreast;
mod acting;
mod angle;
mod behind;
mod canvas;
mod clear;
mod fit;
mod flaws;
mod frame;
mod guise;
mod ink;
mod labels;
mod laid_open;
mod lead;
mod letters;
mod lever;
mod marks;
mod picture;
mod points;
mod scene;
mod sector;
mod sheet;
mod site;
mod strokes;
mod tell;
#[cfg(test)]
mod tests;
mod triangle;
mod wording;

pub use flaws::{Flaw, flaws};
pub use ink::Ink;
pub use letters::spelled;
pub use marks::{
    AngleMark, ComponentMark, DistanceMark, ForceMark, Legs, Marks, Stage, TriangleMark,
};
pub use picture::{Cell, HIGHEST, LegendEntry, Picture, PlacedLabel, Style, WIDEST, picture};
pub use points::PointMark;
pub use scene::{Label, Line, Scene, Sector, Shape, Spot, Stroke, scene};
pub use sheet::{Entry, Share, Sheet};
pub use tell::{Heading, LoadHow, PlaceWord, Told, Whereabouts, tell};
pub use wording::told_words;
