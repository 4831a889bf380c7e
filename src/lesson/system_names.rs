//! The names of a system while it is read: bodies, forces, and numbers, which may be told later
//! than they are first used.

use super::decode::{Fields, Item, Report};
use super::family::Amount;
use super::fault::FaultKind;
use super::quantity::{Want, read_amount, read_exact, read_symbol};
use super::system_spot::stands;
use crate::problem::{Given, GivenId, Place};
use crate::system::{ActId, BodyId};
use crate::text::Symbol;
use crate::units::Dimension;
use jsonc_parser::ast::Value;
use std::collections::{BTreeMap, BTreeSet};

/// The fields of a number written as an object.
const QUANTITY: &[&str] = &["symbol", "is", "same_as", "sought", "written", "si"];
/// The ways to tell a number in an object, by the field that shows the way, each with its fields.
const WAYS: &[(&str, &[&str])] = &[
    ("is", &["symbol", "is"]),
    ("same_as", &["same_as"]),
    ("sought", &["symbol", "sought"]),
    ("written", &["symbol", "written", "si"]),
];

/// The word that asks for the given that is sought; so no force may have it as its name.
pub(super) const SOUGHT: &str = "sought";

/// What may be sought, by its word.
pub(super) const SOUGHT_KINDS: &[(&str, Dimension)] = &[
    ("length", Dimension::LENGTH),
    ("mass", Dimension::MASS),
    ("force", Dimension::FORCE),
    ("angle", Dimension::ANGLE),
    ("coefficient", Dimension::NUMBER),
    ("couple", Dimension::MOMENT),
    ("spread", Dimension::FORCE_A_LENGTH),
    ("mass_per_area", Dimension::MASS_PER_AREA),
];

/// What a force can be asked about, or can have happen to it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Traits {
    /// It has a couple beside its force.
    pub(super) turns: bool,
    /// It is a couple and no force.
    pub(super) only_turns: bool,
    /// It is a rough contact.
    pub(super) rough: bool,
    /// It has a width.
    pub(super) base: bool,
    /// It is a spread load.
    pub(super) spread: bool,
    /// It is the weight of a lamina.
    pub(super) lamina: bool,
}

/// A force by its name.
pub(super) struct KnownForce {
    pub(super) symbol: String,
    pub(super) id: ActId,
    pub(super) traits: Traits,
}

/// A body by its name.
pub(super) struct KnownBody {
    pub(super) name: String,
    pub(super) legs: usize,
}

/// A number by its name.
struct Number<'a> {
    symbol: String,
    /// Where it is told, and as which; `None` while it is only referred to.
    told: Option<(usize, Item<'a>)>,
    dimension: Dimension,
    /// `None` while it is not told, where it is sought, and where it could not be read.
    amount: Option<Amount>,
    is_sought: bool,
    uses: Vec<(Item<'a>, Want)>,
}

/// A system while it is read.
pub(super) struct Reader<'r, 'a> {
    pub(super) report: &'r mut Report,
    pub(super) bodies: Vec<KnownBody>,
    pub(super) forces: Vec<KnownForce>,
    /// The lengths of the legs that were read.
    pub(super) lengths: BTreeMap<(BodyId, usize), GivenId>,
    /// Every place along a leg, with where it stands in the file.
    pub(super) places: Vec<(Item<'a>, BodyId, usize, Place)>,
    /// Every shape of a lamina, with where it stands in the file.
    pub(super) pieces: Vec<Item<'a>>,
    numbers: Vec<Number<'a>>,
    /// Names that the file gives, which no usual name may take.
    own: BTreeSet<&'a str>,
    taken: BTreeSet<String>,
    /// Usual names of numbers that are missing or could not be read: no use of them is blamed.
    lacking: BTreeSet<String>,
    /// Names of forces whose size is a number of the same name that is told elsewhere.
    pub(super) shared: BTreeSet<String>,
}

impl<'r, 'a> Reader<'r, 'a> {
    pub(super) fn new(item: &Item<'a>, report: &'r mut Report) -> Reader<'r, 'a> {
        Reader {
            report,
            bodies: Vec::new(),
            forces: Vec::new(),
            lengths: BTreeMap::new(),
            places: Vec::new(),
            pieces: Vec::new(),
            numbers: Vec::new(),
            own: own_symbols(item.value),
            taken: BTreeSet::new(),
            shared: BTreeSet::new(),
            lacking: BTreeSet::new(),
        }
    }

    /// Reports parts that cannot stand together.
    pub(super) fn contradiction(&mut self, item: &Item<'_>, why: impl Into<String>) {
        let why = why.into();
        self.report.add(item, FaultKind::Contradiction { why });
    }

    /// A name that nothing has yet: the usual one, or with a number or a letter behind it.
    pub(super) fn free(&self, usual: &str) -> String {
        let is_free =
            |name: &String| !self.own.contains(name.as_str()) && !self.taken.contains(name);
        if is_free(&usual.to_owned()) {
            return usual.to_owned();
        }
        let ends_with_digit = usual.ends_with(|c: char| c.is_ascii_digit());
        (2_u32..)
            .map(|number| match (ends_with_digit, usual.contains('_')) {
                // d_1 becomes d_1b, m_b becomes m_b2, L becomes L_2.
                (true, _) => format!("{usual}{}", letters(number)),
                (false, true) => format!("{usual}{number}"),
                (false, false) => format!("{usual}_{number}"),
            })
            .find(is_free)
            .unwrap_or_default()
    }

    /// Remembers that a number is missing that would have had its usual name.
    pub(super) fn lacks(&mut self, usual: &str) {
        let free = self.free(usual);
        self.lacking.extend([usual.to_owned(), free]);
    }

    /// True for a number that is told nowhere, and that no other fault keeps from being told.
    pub(super) fn is_untold(&self, name: &str) -> bool {
        let mut told = self.numbers.iter().filter(|number| number.told.is_some());
        self.every_body_has_a_name()
            && !self.lacking.contains(name)
            && !told.any(|number| number.symbol == name)
    }

    /// The number that must stand under this field.
    pub(super) fn number_in(
        &mut self,
        fields: &Fields<'a>,
        name: &str,
        want: Want,
        usual: &str,
    ) -> Option<GivenId> {
        match fields.required(name, want.example(), self.report) {
            Some(item) => self.quantity(&item, want, usual),
            None => {
                self.lacks(usual);
                None
            }
        }
    }

    /// Takes a name for something; reports a name that is taken.
    pub(super) fn take(&mut self, item: &Item<'_>, symbol: &str) {
        let symbol = symbol.to_owned();
        if symbol == SOUGHT || !self.taken.insert(symbol.clone()) {
            self.report.add(item, FaultKind::NameTwice { symbol });
        }
    }

    /// False where bodies or their names could not be read: then a name is not blamed.
    pub(super) fn every_body_has_a_name(&self) -> bool {
        let nameless = |body: &KnownBody| body.name.trim().is_empty();
        !self.bodies.is_empty() && !self.bodies.iter().any(nameless)
    }

    /// The body of this name.
    pub(super) fn body(&mut self, item: &Item<'a>) -> Option<BodyId> {
        let name = item.text("the name of a body", self.report)?;
        let found = self.bodies.iter().position(|body| body.name == name);
        if found.is_none() && self.every_body_has_a_name() {
            let known = self.bodies.iter().map(|body| body.name.as_str()).collect();
            let kind = no_such("body", name, known);
            self.report.add(item, kind);
        }
        found.map(BodyId)
    }

    /// The force of this name.
    pub(super) fn force(&mut self, item: &Item<'a>) -> Option<(ActId, Traits)> {
        let name = item.text("the name of a force", self.report)?;
        let found = self.forces.iter().find(|force| force.symbol == name);
        if found.is_none() {
            let known = self.forces.iter().map(|force| &*force.symbol).collect();
            let kind = no_such("force", name, known);
            self.report.add(item, kind);
        }
        found.map(|force| (force.id, force.traits))
    }

    /// Reads a number; told here, it joins the givens under its own or its usual name.
    pub(super) fn quantity(&mut self, item: &Item<'a>, want: Want, usual: &str) -> Option<GivenId> {
        let found = self.quantity_of(item, want, usual, None);
        if found.is_none() {
            self.lacks(usual);
        }
        found
    }

    /// The same for the size of a force, which may have the name of the force itself.
    pub(super) fn quantity_of(
        &mut self,
        item: &Item<'a>,
        want: Want,
        usual: &str,
        force: Option<&str>,
    ) -> Option<GivenId> {
        let usual = match force {
            Some(force) if force == usual => usual.to_owned(),
            _ => self.free(usual),
        };
        if item.value.as_object().is_none() {
            let amount = read_amount(item, want, self.report);
            let id = self.tell((item, item), &usual, want, force, amount.clone());
            return amount.map(|_| id);
        }
        let ways: Vec<_> = WAYS.iter().filter(|(way, _)| stands(item, way)).collect();
        let (form, known) = match ways[..] {
            [(way, known)] => (Some(*way), *known),
            _ => (None, QUANTITY),
        };
        let fields = item.fields(known, self.report)?;
        if form.is_none() {
            item.expected(
                "exactly one of \"is\", \"same_as\", \"sought\", \"written\" (with \"si\")",
                self.report,
            );
        }
        if form == Some("same_as") {
            let item = fields.optional("same_as")?;
            let name = item.text("the name of another number", self.report)?;
            return Some(self.refer(&item, name, want));
        }
        let own = fields.optional("symbol");
        let symbol = own.as_ref().map(|own| read_symbol(own, self.report));
        let symbol = symbol.unwrap_or(Some(usual))?;
        let (amount, sought) = match form {
            Some("is") => (
                read_amount(&fields.optional("is")?, want, self.report),
                false,
            ),
            Some("written") => (read_exact(&fields, want, self.report), false),
            Some("sought") => {
                let kind = self.sought_kind(&fields.optional("sought")?, want);
                (None, kind.is_some())
            }
            _ => (None, false),
        };
        // A number that could not be read still has its name, so that no reference to it is blamed.
        let at = own.as_ref().unwrap_or(item);
        let id = self.tell((item, at), &symbol, want, force, amount.clone());
        self.numbers[id.0].is_sought |= sought;
        (sought || amount.is_some()).then_some(id)
    }

    fn sought_kind(&mut self, item: &Item<'a>, want: Want) -> Option<()> {
        let dimension = item.word(SOUGHT_KINDS, self.report)?;
        if dimension != want.dimension() {
            let wanted = SOUGHT_KINDS
                .iter()
                .find(|(_, known)| *known == want.dimension());
            item.expected(
                &format!("\"{}\"", wanted.map_or("", |(word, _)| word)),
                self.report,
            );
            return None;
        }
        Some(())
    }

    /// Tells a number here, at its value and at its name.
    fn tell(
        &mut self,
        (item, at): (&Item<'a>, &Item<'a>),
        symbol: &str,
        want: Want,
        force: Option<&str>,
        amount: Option<Amount>,
    ) -> GivenId {
        let told_before = |number: &Number<'_>| number.symbol == symbol && number.told.is_some();
        let of_force = force == Some(symbol) || self.shared.contains(symbol);
        if !of_force || self.numbers.iter().any(told_before) {
            self.take(at, symbol);
        }
        let count = self
            .numbers
            .iter()
            .filter(|number| number.told.is_some())
            .count();
        let id = self.place_of(symbol, want);
        let number = &mut self.numbers[id.0];
        if number.told.is_none() {
            number.told = Some((count, item.clone()));
            number.dimension = want.dimension();
            number.amount = amount;
        }
        id
    }

    /// A number by its name, told before or later.
    pub(super) fn refer(&mut self, item: &Item<'a>, name: &str, want: Want) -> GivenId {
        let id = self.place_of(name, want);
        self.numbers[id.0].uses.push((item.clone(), want));
        id
    }

    fn place_of(&mut self, symbol: &str, want: Want) -> GivenId {
        let found = self
            .numbers
            .iter()
            .position(|number| number.symbol == symbol);
        let index = found.unwrap_or_else(|| {
            self.numbers.push(Number {
                symbol: symbol.to_owned(),
                told: None,
                dimension: want.dimension(),
                amount: None,
                is_sought: false,
                uses: Vec::new(),
            });
            self.numbers.len() - 1
        });
        GivenId(index)
    }

    /// Reports references to numbers that are told nowhere, or that cannot be used so.
    pub(super) fn check_uses(&mut self) {
        let known: Vec<&str> = self
            .numbers
            .iter()
            .filter(|number| number.told.is_some())
            .map(|number| number.symbol.as_str())
            .collect();
        for number in &self.numbers {
            for (item, want) in &number.uses {
                if number.told.is_none() && self.lacking.contains(&number.symbol) {
                    continue;
                }
                if number.told.is_none() {
                    let kind = no_such("number", &number.symbol, known.clone());
                    self.report.add(item, kind);
                    continue;
                }
                let fits = number.dimension == want.dimension()
                    && number
                        .amount
                        .as_ref()
                        .is_none_or(|amount| want.allows(amount.value));
                if !fits {
                    item.expected(&format!("the name of {}", want.example()), self.report);
                }
            }
        }
    }

    /// Reports every place beyond its leg.
    pub(super) fn check_places(&mut self) {
        let value = |given: GivenId| self.numbers[given.0].amount.as_ref();
        for (item, body, leg, place) in &self.places {
            let Place::At(given) = *place else {
                continue;
            };
            let Some(length) = self.lengths.get(&(*body, *leg)) else {
                continue;
            };
            if let (Some(place), Some(length)) = (value(given), value(*length))
                && place.value > length.value * (1.0 + 1e-12)
            {
                let (place, length) = (place.written.clone(), length.written.clone());
                let beyond = FaultKind::BeyondPart { place, length };
                self.report.add(item, beyond);
            }
        }
    }

    /// The dimension of a number.
    pub(super) fn dimension(&self, id: GivenId) -> Dimension {
        self.numbers[id.0].dimension
    }

    /// The number that is sought, and where it is told; reports every further one.
    pub(super) fn one_sought(&mut self) -> Option<(GivenId, Item<'a>)> {
        let mut sought = self
            .numbers
            .iter()
            .enumerate()
            .filter_map(|(index, number)| {
                let (_, item) = number.told.as_ref()?;
                number.is_sought.then(|| (GivenId(index), item.clone()))
            });
        let first = sought.next();
        let more: Vec<Item<'a>> = sought.map(|(_, item)| item).collect();
        for item in &more {
            self.contradiction(item, "only one number can be sought; give this one a value");
        }
        first
    }

    /// True if a number has this name.
    pub(super) fn is_named(&self, id: GivenId, name: &str) -> bool {
        self.numbers[id.0].symbol == name
    }

    /// The names of the numbers that are told, in the order of telling.
    pub(super) fn given_names(&self) -> Vec<String> {
        let order = self.order();
        order
            .iter()
            .map(|&index| self.numbers[index].symbol.clone())
            .collect()
    }

    /// Where a number is told.
    pub(super) fn told_at(&self, symbol: &str) -> Option<&Item<'a>> {
        let found = self.numbers.iter().find(|number| number.symbol == symbol)?;
        found.told.as_ref().map(|(_, item)| item)
    }

    /// The places of the numbers in the order of telling.
    pub(super) fn order(&self) -> Vec<usize> {
        let told = self.numbers.iter().enumerate();
        let mut told: Vec<(usize, usize)> = told
            .filter_map(|(index, number)| Some((number.told.as_ref()?.0, index)))
            .collect();
        told.sort_unstable();
        told.into_iter().map(|(_, index)| index).collect()
    }

    /// The numbers as givens, in the order in which they were first named. That which is sought has
    /// `middle` as its value.
    pub(super) fn givens(&self, middle: f64) -> Vec<Given> {
        let given = |number: &Number<'_>| {
            let amount = number.amount.clone();
            let amount = amount.unwrap_or_else(|| Amount {
                value: middle,
                written: super::texts::UNKNOWN.to_owned(),
            });
            Given {
                symbol: Symbol::new(number.symbol.clone()),
                meaning: String::new(),
                value: amount.value,
                written: amount.written,
                dimension: number.dimension,
            }
        };
        self.numbers.iter().map(given).collect()
    }
}

/// A reference to what is not there, with the nearest name that is.
pub(super) fn no_such(what: &'static str, name: &str, known: Vec<&str>) -> FaultKind {
    // Small letters for capitals, or slips of the pen in a third of the letters, are the same word.
    let (most, small) = ((name.chars().count() + 1) / 3, name.to_lowercase());
    let mut met = BTreeSet::new();
    let known: Vec<&str> = known
        .into_iter()
        .filter(|known| !known.trim().is_empty() && met.insert(*known))
        .collect();
    let nearest = known
        .iter()
        .map(|known| {
            (
                strsim::damerau_levenshtein(&small, &known.to_lowercase()),
                *known,
            )
        })
        .filter(|(slips, _)| *slips <= most)
        .min();
    FaultKind::NoSuchName {
        what,
        name: crate::text::printable(name),
        nearest: nearest.map(|(_, known)| known.to_owned()),
        known: known.into_iter().map(str::to_owned).collect(),
    }
}

/// 2 is b, 3 is c, 27 is aa.
fn letters(number: u32) -> String {
    let mut number = number;
    let mut text = String::new();
    while number > 0 {
        number -= 1;
        let letter = char::from(b'a' + (number % 26) as u8);
        text.insert(0, letter);
        number /= 26;
    }
    text
}

/// Every name that stands under `symbol` in a file.
fn own_symbols<'a>(value: &'a Value<'a>) -> BTreeSet<&'a str> {
    let mut symbols = BTreeSet::new();
    let mut open = vec![value];
    while let Some(value) = open.pop() {
        match value {
            Value::Object(object) => {
                for property in &object.properties {
                    if let (true, Some(text)) = (
                        property.name.as_str() == "symbol",
                        property.value.as_string_lit(),
                    ) {
                        symbols.insert(text.value.as_ref());
                    }
                    open.push(&property.value);
                }
            }
            Value::Array(array) => open.extend(&array.elements),
            _ => {}
        }
    }
    symbols
}
