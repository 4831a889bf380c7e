//! Quantities as a teacher writes them: `"2.4 m"`, or the values from which one is drawn.

use super::decode::{Fields, Item, Report};
use super::family::Amount;
use super::fault::FaultKind;
use super::names::symbol_means;
use crate::units::{Dimension, Unit, find_unit};
use std::f64::consts::{FRAC_PI_2, PI};

/// The most values that one quantity may be drawn from.
const MOST_CHOICES: usize = 1000;
/// The smallest quantity, in SI units, and the smallest angle, in degrees.
const SMALLEST: f64 = 1e-6;
/// The accelerations of free fall that a class may work with, in m/s²: from small moons to beyond
/// the largest planet.
const GRAVITY: std::ops::RangeInclusive<f64> = 0.1..=100.0;
/// Longest run of digits with which steps are counted exactly.
const MOST_DIGITS: usize = 15;

/// What a quantity is needed as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Want {
    Length,
    Mass,
    Force,
    /// An angle with the horizontal or the vertical, below 90°.
    Slope,
    /// An angle with the body, below 180°.
    BodyAngle,
    /// An angle from the x axis, below 360°.
    Turn,
    Gravity,
    /// The acceleration of free fall of a whole class.
    ClassGravity,
    Couple,
    /// A mass spread over an area.
    MassPerArea,
    /// A load spread along a length.
    Spread,
    /// A pure number, such as a coefficient of friction.
    Coefficient,
    /// A length along an axis, with a sign.
    Coordinate,
}

/// The unit of a pure number.
const NO_UNIT: &Unit = &Unit {
    symbol: "",
    spellings: &[],
    dimension: Dimension::NUMBER,
    factor: 1.0,
};

impl Want {
    pub(super) fn dimension(self) -> Dimension {
        match self {
            Want::Length | Want::Coordinate => Dimension::LENGTH,
            Want::Mass => Dimension::MASS,
            Want::Force => Dimension::FORCE,
            Want::Slope | Want::BodyAngle | Want::Turn => Dimension::ANGLE,
            Want::Gravity | Want::ClassGravity => Dimension::ACCELERATION,
            Want::Couple => Dimension::MOMENT,
            Want::MassPerArea => Dimension::MASS_PER_AREA,
            Want::Spread => Dimension::FORCE_A_LENGTH,
            Want::Coefficient => Dimension::NUMBER,
        }
    }

    /// What is wanted, with an example.
    pub(super) fn example(self) -> &'static str {
        match self {
            Want::Length => "a length such as \"2.4 m\"",
            Want::Mass => "a mass such as \"12 kg\"",
            Want::Force => "a force such as \"400 N\"",
            Want::Slope | Want::BodyAngle | Want::Turn => "an angle such as \"35 deg\"",
            Want::Gravity | Want::ClassGravity => "an acceleration such as \"9.8 m/s^2\"",
            Want::MassPerArea => "a mass per area such as \"8 kg/m^2\"",
            Want::Couple => "a couple such as \"40 N m\"",
            Want::Spread => "a load per metre such as \"150 N/m\"",
            Want::Coefficient => "a number such as \"0.4\"",
            Want::Coordinate => "a coordinate such as \"1.2 m\" or \"-0.4 m\"",
        }
    }

    fn range(self) -> &'static str {
        match self {
            Want::Length => "a length above 0 m",
            Want::Mass => "a mass above 0 kg",
            Want::Force => "a force above 0 N",
            Want::Slope => "an angle above 0° and below 90°",
            Want::BodyAngle => "an angle above 0° and below 180°",
            Want::Turn => "an angle above 0° and below 360°",
            Want::Gravity => "an acceleration above 0 m/s²",
            Want::ClassGravity => "an acceleration from 0.1 m/s² to 100 m/s²",
            Want::MassPerArea => "a mass per area above 0 kg/m²",
            Want::Couple => "a couple above 0 N m",
            Want::Spread => "a load a length above 0 N/m",
            Want::Coefficient => "a number above 0",
            Want::Coordinate => "a coordinate in metres",
        }
    }

    /// What is wanted in place of a value above zero that no calculation bears.
    fn sensible(self) -> &'static str {
        match self {
            Want::Length => "a length from 0.000001 m to 1000000 m",
            Want::Mass => "a mass from 0.000001 kg to 1000000000 kg",
            Want::Force => "a force from 0.000001 N to 1000000000 N",
            Want::Gravity => "an acceleration from 0.000001 m/s² to 1000000 m/s²",
            Want::ClassGravity => "an acceleration from 0.1 m/s² to 100 m/s²",
            Want::Slope => "an angle from 0.000001° and below 90°",
            Want::BodyAngle => "an angle from 0.000001° and below 180°",
            Want::Turn => "an angle from 0.000001° and below 360°",
            Want::MassPerArea => "a mass per area from 0.000001 kg/m² to 1000000000 kg/m²",
            Want::Couple => "a couple from 0.000001 N m to 1000000000 N m",
            Want::Spread => "a load a length from 0.000001 N/m to 1000000000 N/m",
            Want::Coefficient => "a number from 0.000001 to 1000000",
            Want::Coordinate => "a coordinate within 1000000 m",
        }
    }

    /// The range to tell of a value outside it.
    fn wanted(self, value: f64) -> &'static str {
        match self {
            Want::Slope | Want::BodyAngle | Want::Turn if value > SMALLEST.to_radians() => {
                self.range()
            }
            _ if value > 0.0 => self.sensible(),
            _ => self.range(),
        }
    }

    /// True if this SI value can be used so.
    pub(super) fn allows(self, value: f64) -> bool {
        match self {
            Want::Slope => value >= SMALLEST.to_radians() && value < FRAC_PI_2,
            Want::BodyAngle => value >= SMALLEST.to_radians() && value < PI,
            Want::Turn => value >= SMALLEST.to_radians() && value < 2.0 * PI,
            Want::Length | Want::Gravity | Want::Coefficient => (SMALLEST..=1e6).contains(&value),
            Want::ClassGravity => GRAVITY.contains(&value),
            Want::Mass | Want::Force | Want::Couple | Want::Spread | Want::MassPerArea => {
                (SMALLEST..=1e9).contains(&value)
            }
            Want::Coordinate => value.abs() <= 1e6,
        }
    }
}

/// A quantity as a file gives it.
pub(super) struct Quantity<'a> {
    /// Its own name, where the file gives one.
    pub(super) symbol: Option<(Item<'a>, String)>,
    pub(super) source: Source<'a>,
}

/// Where a quantity's value comes from.
pub(super) enum Source<'a> {
    /// One value, for every problem.
    Fixed(Amount),
    /// Drawn from these.
    Drawn(Vec<Amount>),
    /// The value of another given.
    SameAs(Item<'a>, &'a str),
}

/// A number and its unit, as written.
struct Measure<'a> {
    digits: &'a str,
    unit: &'static Unit,
}

impl Measure<'_> {
    fn amount(&self) -> Amount {
        amount(self.digits, self.unit)
    }

    fn decimals(&self) -> usize {
        self.digits
            .split_once('.')
            .map_or(0, |(_, after)| after.len())
    }

    /// The number in units of its last of so many decimals; `None` if it is too long to count.
    fn counted(&self, decimals: usize) -> Option<i64> {
        let mut digits = self.digits.replace('.', "");
        digits.push_str(&"0".repeat(decimals.checked_sub(self.decimals())?));
        let short = digits.trim_start_matches('0').len() <= MOST_DIGITS;
        short.then(|| digits.parse().ok()).flatten()
    }
}

fn amount(digits: &str, unit: &Unit) -> Amount {
    let gap = if matches!(unit.symbol, "" | "°") {
        ""
    } else {
        " "
    };
    Amount {
        value: digits.parse::<f64>().unwrap_or(f64::NAN) * unit.factor,
        written: format!("{digits}{gap}{}", unit.symbol),
    }
}

/// One end of a range in SI, which may be zero.
pub(super) fn bound_of(text: &str, want: Want) -> Option<f64> {
    let value = measure(text, want)?.amount().value;
    value.is_finite().then_some(value)
}

/// Splits `"2.4 m"`; `None` unless it is a plain number and a known unit. Only a coordinate has a
/// sign, only a coefficient no unit.
fn measure(text: &str, want: Want) -> Option<Measure<'_>> {
    let signed = want == Want::Coordinate && text.starts_with('-');
    let from = usize::from(signed);
    let end = text[from..].find(|c: char| !(c.is_ascii_digit() || c == '.'));
    let cut = end.map_or(text.len(), |end| from + end);
    let (digits, unit) = text.split_at(cut);
    let unit = if want == Want::Coefficient && unit.is_empty() {
        NO_UNIT
    } else {
        find_unit(unit.trim()).filter(|unit| unit.dimension == want.dimension())?
    };
    is_plain(&digits[from..]).then_some(Measure { digits, unit })
}

/// True for digits with at most one point among them.
fn is_plain(digits: &str) -> bool {
    match digits.split_once('.') {
        Some((before, after)) => !before.is_empty() && !after.is_empty() && !after.contains('.'),
        None => !digits.is_empty(),
    }
}

/// A factor such as `"-0.5"`.
pub(super) fn factor_of(text: &str) -> Option<f64> {
    let digits = text.strip_prefix('-').unwrap_or(text);
    let plain = is_plain(digits) && digits.chars().all(|c| c.is_ascii_digit() || c == '.');
    let factor = plain.then(|| text.parse::<f64>().ok()).flatten();
    factor.filter(|factor| factor.is_finite())
}

/// The amount that a text tells; `None` unless it is of the dimension and within its range.
pub(super) fn amount_of(text: &str, want: Want) -> Option<Amount> {
    let amount = measure(text, want)?.amount();
    want.allows(amount.value).then_some(amount)
}

/// The same text with its decimal comma as a point, where that is all that is wrong with it.
fn with_point(text: &str, want: Want) -> Option<String> {
    let mended = text.replacen(',', ".", 1);
    (mended != text && measure(&mended, want).is_some()).then_some(mended)
}

fn read_measure<'a>(item: &Item<'a>, want: Want, report: &mut Report) -> Option<Measure<'a>> {
    let read = item.as_text().and_then(|text| measure(text, want));
    let Some(read) = read else {
        match item.as_text().and_then(|text| with_point(text, want)) {
            Some(mended) => item.expected(
                &format!("a point in the number, as in \"{mended}\""),
                report,
            ),
            None => item.expected(want.example(), report),
        }
        return None;
    };
    let value = read.amount().value;
    if !want.allows(value) {
        item.expected(want.wanted(value), report);
        return None;
    }
    Some(read)
}

/// One value with its unit.
pub(super) fn read_amount(item: &Item<'_>, want: Want, report: &mut Report) -> Option<Amount> {
    read_measure(item, want, report).map(|read| read.amount())
}

const FIELDS: &[&str] = &[
    "symbol", "is", "from", "to", "step", "among", "same_as", "written", "si",
];

/// A quantity: one value, or an object with a name of its own, a range, a choice or a reference.
pub(super) fn read_quantity<'a>(
    item: &Item<'a>,
    want: Want,
    report: &mut Report,
) -> Option<Quantity<'a>> {
    if item.value.as_object().is_none() {
        let fixed = read_amount(item, want, report)?;
        return Some(Quantity {
            symbol: None,
            source: Source::Fixed(fixed),
        });
    }
    let fields = item.fields(FIELDS, report)?;
    let symbol = fields.optional("symbol").and_then(|item| {
        let symbol = read_symbol(&item, report)?;
        Some((item, symbol))
    });
    let source = read_source(item, &fields, want, report)?;
    Some(Quantity { symbol, source })
}

fn read_source<'a>(
    item: &Item<'a>,
    fields: &Fields<'a>,
    want: Want,
    report: &mut Report,
) -> Option<Source<'a>> {
    let forms = ["is", "from", "among", "same_as", "written"];
    let given: Vec<&str> = forms.into_iter().filter(|form| fields.has(form)).collect();
    let [form] = given[..] else {
        item.expected(
            "exactly one of \"is\", \"from\" (with \"to\" and \"step\"), \"among\", \"same_as\", \
             \"written\" (with \"si\")",
            report,
        );
        return None;
    };
    match form {
        "is" => read_amount(&fields.optional("is")?, want, report).map(Source::Fixed),
        "from" => read_steps(fields, want, report).map(Source::Drawn),
        "among" => read_among(&fields.optional("among")?, want, report).map(Source::Drawn),
        "same_as" => {
            let item = fields.optional("same_as")?;
            let symbol = item.text("the name of another given", report)?;
            Some(Source::SameAs(item, symbol))
        }
        _ => read_exact(fields, want, report).map(Source::Fixed),
    }
}

fn read_steps(fields: &Fields<'_>, want: Want, report: &mut Report) -> Option<Vec<Amount>> {
    let mut read = |name: &str| {
        let item = fields.required(name, want.example(), report)?;
        let measure = read_measure(&item, want, report)?;
        Some((item, measure))
    };
    let (from, to, step) = (read("from"), read("to"), read("step"));
    let ((_, from), (to_item, to), (step_item, step)) = (from?, to?, step?);
    for (item, other) in [(&to_item, &to), (&step_item, &step)] {
        if other.unit != from.unit {
            item.expected(
                &format!("a value in {} like \"from\"", from.unit.symbol),
                report,
            );
            return None;
        }
    }
    let decimals = from.decimals().max(to.decimals()).max(step.decimals());
    let counts = (
        from.counted(decimals),
        to.counted(decimals),
        step.counted(decimals),
    );
    let does_not_fit = FaultKind::StepDoesNotFit {
        from: from.amount().written,
        to: to.amount().written,
        step: step.amount().written,
    };
    let (Some(first), Some(last), Some(by)) = counts else {
        report.add(&step_item, does_not_fit);
        return None;
    };
    if last <= first || (last - first) % by != 0 {
        report.add(&step_item, does_not_fit);
        return None;
    }
    let steps = (last - first) / by;
    if steps >= MOST_CHOICES as i64 {
        let what = format!(
            "{} values, at most {MOST_CHOICES} are drawn from",
            steps + 1
        );
        report.add(&step_item, FaultKind::TooMany { what });
        return None;
    }
    let choice = |index| amount(&decimal_text(first + index * by, decimals), from.unit);
    Some((0..=steps).map(choice).collect())
}

/// A whole count of last decimals as a decimal: 24 with one decimal is `2.4`.
fn decimal_text(count: i64, decimals: usize) -> String {
    let mut text = format!("{count:0width$}", width = decimals + 1);
    if decimals > 0 {
        text.insert(text.len() - decimals, '.');
    }
    text
}

fn read_among(item: &Item<'_>, want: Want, report: &mut Report) -> Option<Vec<Amount>> {
    let elements = item.elements("values", (1, MOST_CHOICES), report)?;
    let mut choices: Vec<Amount> = Vec::new();
    for element in &elements {
        let Some(amount) = read_amount(element, want, report) else {
            continue;
        };
        if choices.iter().any(|choice| choice.value == amount.value) {
            let why = format!("{} stands twice in this list; keep one", amount.written);
            report.add(element, FaultKind::Contradiction { why });
            continue;
        }
        choices.push(amount);
    }
    (!choices.is_empty()).then_some(choices)
}

/// A value told apart from how it is printed: what programs write where the two differ.
pub(super) fn read_exact(fields: &Fields<'_>, want: Want, report: &mut Report) -> Option<Amount> {
    let written = fields
        .optional("written")?
        .said("a value as it is printed", report);
    let item = fields.required("si", "the value in SI units, angles in radians", report)?;
    let number = item.value.as_number_lit();
    let value = number.and_then(|number| number.value.parse::<f64>().ok());
    let Some(value) = value.filter(|&value| want.allows(value)) else {
        item.expected(want.wanted(value.unwrap_or(0.0)), report);
        return None;
    };
    Some(Amount {
        value,
        written: written?.to_owned(),
    })
}

/// The name of a quantity.
pub(super) fn read_symbol(item: &Item<'_>, report: &mut Report) -> Option<String> {
    let text = item.text("a name such as \"m_1\"", report)?;
    let good = |c: char| c.is_alphanumeric() || matches!(c, '_' | '⊥' | '∥' | '\'' | '′');
    let named = text.starts_with(char::is_alphabetic)
        && text.chars().all(good)
        && text.chars().count() <= 16;
    if !named {
        item.expected(
            "a name such as \"m_1\": a letter, then letters, digits or _, 16 at most",
            report,
        );
        return None;
    }
    if let Some(means) = symbol_means(text) {
        let (name, means) = (text.to_owned(), means.to_owned());
        report.add(item, FaultKind::Reserved { name, means });
        return None;
    }
    Some(text.to_owned())
}
