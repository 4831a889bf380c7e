//! Reading what is asked of a system, and the number that is sought.

use super::decode::{Fields, Item};
use super::quantity::{Want, bound_of};
use super::system_names::{Reader, SOUGHT, Traits};
use super::system_spot::stands;
use crate::problem::GivenId;
use crate::system::{ActId, Asked, Sought, When};
use crate::units::Dimension;

const SOUGHT_FIELDS: &[&str] = &["given", "from", "to", "when"];
const REACHES: &[&str] = &["reaches", "limit"];
const SLIPS: &[&str] = &["slips", "coefficient"];

const WHEN: &str = "{\"reaches\": \"T\", \"limit\": \"400 N\"}, {\"vanishes\": \"N\"}, \
                    {\"slips\": \"N\", \"coefficient\": \"0.4\"}, {\"topples\": \"B\"} or {\"rests\": \"sign\"}";
const ASKED: &str = "the name of a force, {\"horizontal\": \"H\"}, {\"vertical\": \"H\"}, \
                     {\"couple\": \"M\"} or \"sought\"";

impl<'a> Reader<'_, 'a> {
    /// What is asked, in order.
    pub(super) fn asked(&mut self, fields: &Fields<'a>) -> Option<Vec<Asked>> {
        let items = self.list(fields, "asked");
        let asked: Vec<Option<Asked>> = items.iter().map(|item| self.ask(item, fields)).collect();
        asked.into_iter().collect()
    }

    fn ask(&mut self, item: &Item<'a>, fields: &Fields<'a>) -> Option<Asked> {
        if item.as_text() == Some(SOUGHT) {
            if !fields.has(SOUGHT) {
                self.contradiction(item, "nothing is sought; add \"sought\" beside \"asked\"");
            }
            return Some(Asked::Sought);
        }
        if item.as_text().is_some() {
            return self.force(item).map(|(id, _)| Asked::Force(id));
        }
        let forms = ["horizontal", "vertical", "couple"];
        let Some(form) = forms.into_iter().find(|form| stands(item, form)) else {
            item.expected(ASKED, self.report);
            return None;
        };
        let at = item.fields(&[form], self.report)?.optional(form)?;
        let (id, traits) = self.force(&at)?;
        match form {
            "couple" if !(traits.turns || traits.only_turns) => {
                self.contradiction(
                    &at,
                    "only a built-in end, a base or a couple turns; ask for the force",
                );
            }
            "horizontal" | "vertical" if traits.only_turns => {
                self.contradiction(&at, "a couple has no parts; ask for the couple itself");
            }
            _ => {}
        }
        Some(match form {
            "horizontal" => Asked::Horizontal(id),
            "vertical" => Asked::Vertical(id),
            _ => Asked::Couple(id),
        })
    }

    /// The number that is sought; `Some(None)` where none is.
    pub(super) fn sought(&mut self, fields: &Fields<'a>) -> Option<Option<Sought>> {
        let Some(item) = fields.optional(SOUGHT) else {
            if let Some((_, at)) = self.one_sought() {
                self.contradiction(
                    &at,
                    "this number is sought; add \"sought\" with its range and condition",
                );
                return None;
            }
            return Some(None);
        };
        let fields = item.fields(SOUGHT_FIELDS, self.report)?;
        // The condition may tell the number that is sought.
        let when = fields
            .required("when", WHEN, self.report)
            .and_then(|item| self.when(&item));
        let name = "the name of the number that is sought, such as \"d\"";
        let given = fields
            .required("given", name, self.report)
            .and_then(|item| self.sought_given(&item));
        let Some(given) = given else {
            for name in ["from", "to"] {
                fields.required(name, "the end of its range", self.report);
            }
            return None;
        };
        let dimension = self.dimension(given);
        let low = self.bound(&fields, "from", dimension);
        let high = self.bound(&fields, "to", dimension);
        let (low, high) = (low?, high?);
        if low >= high {
            let at = fields.optional("to")?;
            self.contradiction(&at, "this range is empty: \"to\" must be above \"from\"");
            return None;
        }
        Some(Some(Sought {
            given,
            low,
            high,
            when: when?,
        }))
    }

    fn sought_given(&mut self, item: &Item<'a>) -> Option<GivenId> {
        let name = item.text("the name of a number", self.report)?;
        let known = self.given_names();
        if !known.iter().any(|known| known == name) {
            if !self.is_untold(name) {
                return None;
            }
            let known = known.iter().map(String::as_str).collect();
            let kind = super::system_names::no_such("number", name, known);
            self.report.add(item, kind);
            return None;
        }
        // A word for what is sought that is not understood is told there.
        let at = self.told_at(name).cloned();
        let says_sought = at.is_some_and(|at| stands(&at, SOUGHT));
        match self.one_sought() {
            Some((given, _)) if self.is_named(given, name) => Some(given),
            _ if says_sought => None,
            _ => {
                let why = format!(
                    "{name} has a value; write {{\"symbol\": \"{name}\", \"sought\": …}} where it stands"
                );
                self.contradiction(item, why);
                None
            }
        }
    }

    /// One end of the range, in SI.
    fn bound(&mut self, fields: &Fields<'a>, name: &str, dimension: Dimension) -> Option<f64> {
        let item = fields.required(name, "the end of its range", self.report)?;
        let want = match dimension {
            Dimension::LENGTH => Want::Coordinate,
            Dimension::MASS => Want::Mass,
            Dimension::FORCE => Want::Force,
            Dimension::ANGLE => Want::Turn,
            Dimension::MOMENT => Want::Couple,
            Dimension::FORCE_A_LENGTH => Want::Spread,
            Dimension::MASS_PER_AREA => Want::MassPerArea,
            _ => Want::Coefficient,
        };
        // A range may begin at nothing, or end at a full turn, which a value may not.
        let read = item.as_text().and_then(|text| bound_of(text, want));
        if read.is_none() {
            item.expected(want.example(), self.report);
        }
        read
    }

    fn when(&mut self, item: &Item<'a>) -> Option<When> {
        let forms: [(&str, &[&str]); 5] = [
            ("reaches", REACHES),
            ("vanishes", &["vanishes"]),
            ("slips", SLIPS),
            ("topples", &["topples"]),
            ("rests", &["rests"]),
        ];
        let Some((form, known)) = forms.into_iter().find(|(form, _)| stands(item, form)) else {
            item.expected(WHEN, self.report);
            return None;
        };
        let fields = item.fields(known, self.report)?;
        let at = fields.optional(form)?;
        if form == "rests" {
            return self.body(&at).map(When::Rests);
        }
        let force = self.force(&at);
        if let Some((id, traits)) = force {
            self.can_happen(&at, form, id, traits);
        }
        let act = force.map(|(id, _)| id);
        if act.is_none() {
            // Whichever force is meant, its limit would have had its name.
            let limits = self
                .forces
                .iter()
                .map(|force| format!("{}_max", force.symbol));
            let limits: Vec<String> = limits.collect();
            limits.iter().for_each(|limit| self.lacks(limit));
        }
        match form {
            "reaches" => {
                let usual = at
                    .as_text()
                    .map_or("F_max".to_owned(), |name| format!("{name}_max"));
                let limit = self.number_in(&fields, "limit", Want::Force, &usual);
                let (act, limit) = (act?, limit?);
                Some(When::Reaches { act, limit })
            }
            "slips" => {
                let coefficient = self.number_in(&fields, "coefficient", Want::Coefficient, "μ");
                let (act, coefficient) = (act?, coefficient?);
                Some(When::Slips { act, coefficient })
            }
            "vanishes" => act.map(When::Vanishes),
            _ => act.map(When::Topples),
        }
    }

    fn can_happen(&mut self, at: &Item<'a>, form: &str, id: ActId, traits: Traits) {
        let known = matches!(id, ActId::Weight(_) | ActId::Load(_));
        let why = match form {
            "slips" if !traits.rough => "only a rough contact or a base can slip",
            "topples" if !traits.base => "only a base can topple",
            "reaches" | "vanishes" if known => "this force is given; name a rope or a hold",
            "reaches" if traits.only_turns => "this is a couple, and the limit is a force",
            _ => return,
        };
        self.contradiction(at, why);
    }
}

/// The bound as text in SI that [`Reader::bound`] reads.
pub(super) fn bound_text(value: f64, dimension: Dimension) -> String {
    let unit = match dimension {
        Dimension::LENGTH => " m",
        Dimension::MASS => " kg",
        Dimension::FORCE => " N",
        Dimension::ANGLE => " rad",
        Dimension::MOMENT => " N m",
        Dimension::FORCE_A_LENGTH => " N/m",
        Dimension::MASS_PER_AREA => " kg/m²",
        _ => "",
    };
    format!("{value}{unit}")
}
