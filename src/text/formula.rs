//! A formula as it is shown: in one row, or in several with its fractions stacked.

use unicode_width::UnicodeWidthStr;

/// A formula, as parts that can be set.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Formula {
    /// Names, figures and signs that stand in one row, blanks included.
    Text(String),
    /// Parts side by side.
    Parts(Vec<Formula>),
    /// The sign between two factors.
    Times,
    /// The sign before an opposite.
    Minus,
    /// In brackets.
    Brackets(Box<Formula>),
    /// In brackets in one row only: stacked, a bar shows what belongs together.
    Kept(Box<Formula>),
    /// What is divided, and by what.
    Fraction(Box<Formula>, Box<Formula>),
    /// A square root.
    Root(Box<Formula>),
    /// A base and its exponent.
    Power(Box<Formula>, Box<Formula>),
}

/// A formula in rows of character cells, all equally wide.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Block {
    /// The rows from above, filled with blanks.
    pub rows: Vec<String>,
    /// The row on which its signs and the bars of its outermost fractions stand.
    pub main: usize,
}

impl Formula {
    /// A formula that is already a text in one row.
    pub fn text(text: impl Into<String>) -> Formula {
        Formula::Text(text.into())
    }

    /// In one row, with brackets where it would have two meanings without.
    pub fn row(&self) -> String {
        match self {
            Formula::Text(text) => text.clone(),
            Formula::Parts(parts) => parts.iter().map(Formula::row).collect(),
            Formula::Times => "·".to_owned(),
            Formula::Minus => "−".to_owned(),
            Formula::Brackets(inner) | Formula::Kept(inner) => format!("({})", inner.row()),
            Formula::Fraction(above, below) => format!("{}/{}", above.row(), below.row()),
            Formula::Root(inner) => format!("√({})", inner.row()),
            Formula::Power(base, exponent) => {
                let (base, exponent) = (base.row(), exponent.row());
                match superscript(&exponent).filter(|_| exponent.len() <= 3) {
                    Some(raised) => format!("{base}{raised}"),
                    None => format!("{base}^{exponent}"),
                }
            }
        }
    }

    /// The same with each of its texts changed, as by the decimal sign that somebody has chosen.
    pub fn each(&self, change: &dyn Fn(&str) -> String) -> Formula {
        let boxed = |inner: &Formula| Box::new(inner.each(change));
        match self {
            Formula::Text(text) => Formula::Text(change(text)),
            Formula::Parts(parts) => {
                Formula::Parts(parts.iter().map(|part| part.each(change)).collect())
            }
            Formula::Times => Formula::Times,
            Formula::Minus => Formula::Minus,
            Formula::Brackets(inner) => Formula::Brackets(boxed(inner)),
            Formula::Kept(inner) => Formula::Kept(boxed(inner)),
            Formula::Fraction(above, below) => Formula::Fraction(boxed(above), boxed(below)),
            Formula::Root(inner) => Formula::Root(boxed(inner)),
            Formula::Power(base, exponent) => Formula::Power(boxed(base), boxed(exponent)),
        }
    }

    /// In rows with its fractions stacked; `None` where that takes more than `width` columns or
    /// `height` rows. Without `unicode` its own signs are ASCII.
    ///
    /// ```
    /// use leverwright::text::Formula;
    /// let part = |text: &str| Box::new(Formula::text(text));
    /// let half = Formula::Fraction(part("L"), part("2"));
    /// assert_eq!(half.block(true, 9, 3).unwrap().rows, ["L", "─", "2"]);
    /// ```
    pub fn block(&self, unicode: bool, width: usize, height: usize) -> Option<Block> {
        let setting = Setting {
            unicode,
            width,
            height,
        };
        setting.set(self)
    }
}

/// From so many rows on a part holds a fraction; a root of one row has two.
const STACKED: usize = 3;

/// What a formula is set with.
struct Setting {
    unicode: bool,
    width: usize,
    height: usize,
}

impl Setting {
    fn either<'t>(&self, fine: &'t str, ascii: &'t str) -> &'t str {
        if self.unicode { fine } else { ascii }
    }

    fn set(&self, formula: &Formula) -> Option<Block> {
        let block = match formula {
            Formula::Text(text) => Block::of(text),
            Formula::Parts(parts) => self.parts(parts)?,
            Formula::Times => Block::of(self.either("·", "*")),
            Formula::Minus => Block::of(self.either("−", "-")),
            Formula::Brackets(inner) => self.bracketed(&self.set(inner)?),
            Formula::Kept(inner) => self.set(inner)?,
            Formula::Fraction(above, below) => {
                let bar = self.either("─", "-");
                Block::stacked(&self.set(above)?, bar, &self.set(below)?)
            }
            Formula::Root(inner) => self.root(&self.set(inner)?),
            Formula::Power(base, exponent) => self.power(base, exponent)?,
        };
        // Asked of every part, so that a formula that grows too large is given up early.
        (block.width() <= self.width && block.rows.len() <= self.height).then_some(block)
    }

    /// Side by side. A sign next to a fraction stands free of its bar.
    fn parts(&self, parts: &[Formula]) -> Option<Block> {
        let blocks: Vec<Block> = (parts.iter())
            .map(|part| self.set(part))
            .collect::<Option<_>>()?;
        let is_stacked = |place: Option<usize>| {
            let block = place.and_then(|place| blocks.get(place));
            block.is_some_and(|block| block.rows.len() >= STACKED)
        };
        let mut joined = Block::of("");
        for (place, part) in parts.iter().enumerate() {
            let before = is_stacked(place.checked_sub(1));
            let after = is_stacked(Some(place + 1));
            let block = &blocks[place];
            let sign = &block.rows[0];
            joined = match part {
                Formula::Times if before || after => {
                    joined.beside(&Block::of(&format!(" {sign} ")))
                }
                Formula::Minus if after => joined.beside(&Block::of(&format!("{sign} "))),
                _ => joined.beside(block),
            };
        }
        Some(joined)
    }

    fn bracketed(&self, inner: &Block) -> Block {
        let open = self.tall(inner, "(", ["⎛", "⎜", "⎝"]);
        let close = self.tall(inner, ")", ["⎞", "⎟", "⎠"]);
        open.beside(inner).beside(&close)
    }

    /// A bracket as high as this: from above its first, its further and its last part.
    fn tall(&self, inner: &Block, low: &str, [first, further, last]: [&str; 3]) -> Block {
        let count = inner.rows.len();
        if count == 1 {
            return Block::of(low);
        }
        let sign = |row: usize| match (self.unicode, row) {
            (true, 0) => first,
            (true, row) if row + 1 == count => last,
            (true, _) => further,
            (false, row) if row == inner.main => low,
            (false, _) => "|",
        };
        Block {
            rows: (0..count).map(|row| sign(row).to_owned()).collect(),
            main: inner.main,
        }
    }

    /// The sign before it and a bar over it; in ASCII the word and brackets.
    fn root(&self, inner: &Block) -> Block {
        if !self.unicode {
            return Block::of("sqrt").beside(&self.bracketed(inner));
        }
        let sign = |row: usize| if row == inner.main { "√" } else { "│" };
        let under = inner.rows.iter().enumerate();
        let mut rows = vec![format!(" {}", "‾".repeat(inner.width()))];
        rows.extend(under.map(|(row, text)| format!("{}{text}", sign(row))));
        Block {
            rows,
            main: inner.main + 1,
        }
    }

    fn power(&self, base: &Formula, exponent: &Formula) -> Option<Block> {
        let below = self.set(base)?;
        // Behind a root the exponent could be read as one under its bar.
        let below = match base {
            Formula::Root(_) => self.bracketed(&below),
            _ => below,
        };
        let bare = match exponent {
            Formula::Brackets(inner) | Formula::Kept(inner) => inner.row(),
            exponent => exponent.row(),
        };
        let raised = superscript(&bare).filter(|_| self.unicode);
        let Some(raised) = raised else {
            let shown = self.plain(&exponent.row());
            return Some(below.beside(&Block::of(&format!("^{shown}"))));
        };
        let width = raised.width();
        let mut rows = vec![" ".repeat(width); below.rows.len()];
        rows[0] = raised;
        let main = below.main;
        Some(below.beside(&Block { rows, main }))
    }

    /// A row with the signs of this setting.
    fn plain(&self, row: &str) -> String {
        if self.unicode {
            return row.to_owned();
        }
        let signs = row.replace('·', "*").replace('−', "-");
        lowered(&signs.replace('√', "sqrt"))
    }
}

impl Block {
    fn of(text: &str) -> Block {
        Block {
            rows: vec![text.to_owned()],
            main: 0,
        }
    }

    fn width(&self) -> usize {
        self.rows.first().map_or(0, |row| row.width())
    }

    /// Both on one main row.
    fn beside(&self, right: &Block) -> Block {
        let main = self.main.max(right.main);
        let under = |block: &Block| block.rows.len() - block.main;
        let count = main + under(self).max(under(right));
        let row = |block: &Block, row: usize| {
            let own = (row + block.main).checked_sub(main);
            let text = own.and_then(|own| block.rows.get(own));
            text.map_or_else(|| " ".repeat(block.width()), Clone::clone)
        };
        Block {
            rows: (0..count)
                .map(|at| row(self, at) + &row(right, at))
                .collect(),
            main,
        }
    }

    /// One over the other. The bar reaches over a fraction within, so that it is seen which of
    /// two bars divides last.
    fn stacked(above: &Block, bar: &str, below: &Block) -> Block {
        let nested = above.rows.len() >= STACKED || below.rows.len() >= STACKED;
        let width = above.width().max(below.width()) + if nested { 2 } else { 0 };
        let centred = |row: &String| {
            let free = width - row.width();
            let left = free / 2;
            format!("{}{row}{}", " ".repeat(left), " ".repeat(free - left))
        };
        let mut rows: Vec<String> = above.rows.iter().map(centred).collect();
        let main = rows.len();
        rows.push(bar.repeat(width));
        rows.extend(below.rows.iter().map(centred));
        Block { rows, main }
    }
}

const RAISED: [char; 10] = ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'];

/// A text whose superscripts stand behind `^` on its line: `10^-3` for `10⁻³`.
pub(crate) fn lowered(text: &str) -> String {
    let mut out = String::new();
    let mut raised = false;
    for c in text.chars() {
        let digit = RAISED.iter().zip('0'..='9').find(|(known, _)| **known == c);
        let plain = match c {
            '⁻' => Some('-'),
            _ => digit.map(|(_, digit)| digit),
        };
        if plain.is_some() && !raised {
            out.push('^');
        }
        raised = plain.is_some();
        out.push(plain.unwrap_or(c));
    }
    out
}

/// A whole number as superscript; `None` where it is not one.
pub(crate) fn superscript(digits: &str) -> Option<String> {
    digits
        .chars()
        .map(|c| match c {
            '-' | '−' => Some('⁻'),
            c => c.to_digit(10).map(|digit| RAISED[digit as usize]),
        })
        .collect()
}
