//! What a class asks of an answer beside its value. The value alone decides whether it is right.

/// What comes of a bare number where a unit belongs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum UnitAsked {
    /// It counts, and its unit is told.
    #[default]
    Told,
    /// It waits until its unit stands there.
    Asked,
    /// It counts, its unit is told, and that it lacked is told among the slips at the end.
    Marked,
}

/// What comes of a last value in more or fewer figures than are asked.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FiguresAsked {
    /// No class says: fewer than three wait, or than two where two are asked; three are enough.
    #[default]
    Usual,
    /// Too few count, from two on, and how many are wanted is told.
    Told,
    /// Fewer than are asked wait; more count.
    Asked,
    /// Too few wait, and so do too many.
    Exact,
}

/// What a class asks of an answer beside its value.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Asking {
    /// Of its unit.
    pub unit: UnitAsked,
    /// Of its figures.
    pub figures: FiguresAsked,
}

impl UnitAsked {
    /// The words by which files call them.
    pub const WORDS: &[(&str, UnitAsked)] = &[
        ("told", UnitAsked::Told),
        ("asked", UnitAsked::Asked),
        ("marked", UnitAsked::Marked),
    ];

    /// Its word.
    pub fn word(self) -> &'static str {
        word_of(UnitAsked::WORDS, self)
    }
}

impl FiguresAsked {
    /// The words by which files call them.
    pub const WORDS: &[(&str, FiguresAsked)] = &[
        ("told", FiguresAsked::Told),
        ("asked", FiguresAsked::Asked),
        ("exact", FiguresAsked::Exact),
    ];

    /// Its word.
    pub fn word(self) -> &'static str {
        word_of(FiguresAsked::WORDS, self)
    }
}

fn word_of<T: PartialEq>(words: &[(&'static str, T)], meant: T) -> &'static str {
    let found = words.iter().find(|(_, value)| *value == meant);
    found.map_or("", |(word, _)| *word)
}
