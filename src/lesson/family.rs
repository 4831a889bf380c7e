//! A lesson: a family of problems, and the words to tell them.

use super::class::measures_from;
use super::grid::{Grid, GridPlace};
use super::texts::{Text, fill};
use crate::problem::{Flaw, GivenId, Parts, Problem, Reference};
use std::collections::BTreeMap;

/// One value that a quantity may have.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Amount {
    /// Its SI value.
    pub(super) value: f64,
    /// As printed, with unit.
    pub(super) written: String,
}

/// A drawn quantity of a variant: which given, and the values it may have.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Drawn {
    pub(super) given: GivenId,
    pub(super) choices: Vec<Amount>,
}

/// One structure of a lesson. Its parts hold keys in the place of words, and the first choice of
/// every drawn quantity.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Variant {
    pub(super) parts: Parts,
    pub(super) drawn: Vec<Drawn>,
    /// Keys of the sentences that make its statement.
    pub(super) says: Vec<String>,
}

/// A lesson: structures, ranges of numbers, and texts, from which problems are drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Lesson {
    pub(super) id: String,
    pub(super) version: u32,
    pub(super) builds_on: Vec<String>,
    pub(super) skills: Vec<String>,
    pub(super) gravity: f64,
    pub(super) figures: u8,
    pub(super) variants: Vec<Variant>,
    pub(super) texts: BTreeMap<String, Text>,
    pub(super) grid: Grid,
    pub(super) checksum: u32,
    /// The line from which its angles are to be measured, where the class has one.
    pub(super) angles_from: Option<Reference>,
}

impl Lesson {
    /// Its short name, a word such as `mast`; it begins the codes of its problems.
    pub fn id(&self) -> &str {
        &self.id
    }

    /// The version that its author gave it.
    pub fn version(&self) -> u32 {
        self.version
    }

    /// The ids of the lessons that should come before it.
    pub fn builds_on(&self) -> &[String] {
        &self.builds_on
    }

    /// The skills that it exercises, by key.
    pub fn skills(&self) -> &[String] {
        &self.skills
    }

    /// The size of the acceleration of free fall that it is told with, in m/s².
    pub fn gravity(&self) -> f64 {
        self.gravity
    }

    /// Significant figures in which its results are asked.
    pub fn figures(&self) -> u8 {
        self.figures
    }

    /// The languages of its texts, as tags such as `en`.
    pub fn languages(&self) -> impl Iterator<Item = &str> {
        self.texts.keys().map(String::as_str)
    }

    /// Its title in a language; in English or the first language it has where that one is missing.
    pub fn title(&self, language: &str) -> &str {
        self.text(language).map_or("", |text| &text.title)
    }

    /// What it teaches, in one sentence; the language as for [`Lesson::title`].
    pub fn teaches(&self, language: &str) -> &str {
        self.text(language).map_or("", |text| &text.teaches)
    }

    /// Every problem that it can pose.
    pub fn grid(&self) -> &Grid {
        &self.grid
    }

    /// How many problems it can pose, before any are set aside as not worth asking.
    pub fn size(&self) -> u128 {
        self.grid.size()
    }

    /// A checksum of all that decides the numbers of its problems and their answers: structures,
    /// ranges, g, figures. Texts, skills and accepted values of g do not change it.
    pub fn checksum(&self) -> u32 {
        self.checksum
    }

    /// True if a problem at this place may be drawn: where the class measures angles from one line,
    /// those with angles from the other are not, unless the lesson has no others.
    pub fn may_draw(&self, place: &GridPlace) -> bool {
        let Some(from) = self.angles_from else {
            return true;
        };
        let is_drawn = |variant: &Variant| measures_from(variant, from);
        self.variants.get(place.variant).is_some_and(is_drawn)
            || !self.variants.iter().any(is_drawn)
    }

    /// The problem at a place of the grid, told in a language (as for [`Lesson::title`]).
    ///
    /// # Errors
    /// [`Flaw::NoSuchGiven`] for a place outside the grid. A lesson that was read without a fault
    /// has no other flaw.
    pub fn problem_at(&self, place: &GridPlace, language: &str) -> Result<Problem, Vec<Flaw>> {
        let no_such = || vec![Flaw::NoSuchGiven];
        if !self.grid.holds(place) {
            return Err(no_such());
        }
        let variant = self.variants.get(place.variant).ok_or_else(no_such)?;
        let text = self.text(language).ok_or_else(no_such)?;
        let mut parts = variant.parts.clone();
        for (drawn, &index) in variant.drawn.iter().zip(&place.indices) {
            let choice = drawn.choices.get(index as usize).ok_or_else(no_such)?;
            let given = parts.givens.get_mut(drawn.given.0).ok_or_else(no_such)?;
            given.value = choice.value;
            given.written.clone_from(&choice.written);
        }
        text.tell(&mut parts, &text.template(&variant.says));
        Problem::new(parts)
    }

    fn text(&self, language: &str) -> Option<&Text> {
        self.texts
            .get(language)
            .or_else(|| self.texts.get("en"))
            .or_else(|| self.texts.values().next())
    }
}

impl Text {
    /// The sentences of these keys, one after another.
    pub(super) fn template(&self, says: &[String]) -> String {
        let sentences: Vec<&str> = says
            .iter()
            .filter_map(|key| self.sentences.get(key))
            .map(String::as_str)
            .collect();
        sentences.join(" ")
    }

    /// Puts this language's words in the place of keys.
    pub(super) fn tell(&self, parts: &mut Parts, template: &str) {
        let word = |key: &mut String| {
            if let Some(word) = self.nouns.get(key.as_str()) {
                key.clone_from(word);
            }
        };
        word(&mut parts.body.noun);
        parts
            .supports
            .iter_mut()
            .for_each(|part| word(&mut part.noun));
        parts.ropes.iter_mut().for_each(|part| word(&mut part.noun));
        parts.loads.iter_mut().for_each(|part| word(&mut part.noun));
        for given in &mut parts.givens {
            if let Some(meaning) = self.meanings.get(given.symbol.as_str()) {
                given.meaning.clone_from(meaning);
            }
        }
        parts.title.clone_from(&self.title);
        parts.caution.clone_from(&self.caution);
        parts.statement = fill(template, &parts.givens);
    }
}
