//! What a name that is told in words stands for where its words are of nothing known: `D` of "the
//! hinge pulls down with D", an `x` measured from somewhere. It is the one quantity with which a
//! line that is full but for that name is proved; where several would do, or none, it stays open.

use super::turn::verdict_of;
use super::{Outcome, Session};
use crate::judge::{Judgement, Remark, Truth};
use crate::key::{Axis, Part, StepId};
use crate::text::{Prose, Slot};
use crate::units::Dimension;

/// Words that stand in a value beside numbers.
const OF_VALUES: [&str; 14] = [
    "N", "kN", "m", "cm", "mm", "kg", "g", "deg", "rad", "sin", "cos", "tan", "sqrt", "cot",
];

/// What a name may stand for.
#[derive(Clone)]
struct Meant {
    /// As it is typed in the place of the name.
    form: String,
    shown: String,
    /// The quantity of the problem that it is, or is the other way about.
    step: Option<StepId>,
    /// True for that quantity counted against its axis.
    against: bool,
}

/// What a name of hers was seen to stand for.
#[derive(Clone)]
pub(super) struct Meaning {
    form: String,
    shown: String,
    /// The symbol of the quantity that it is the other way about.
    against: Option<String>,
}

impl Session {
    /// The answer to a line with a name that is told and not known, where the line says which
    /// quantity that must be.
    pub(super) fn answer_by_meaning(&mut self, line: &str, name: &str) -> Option<Outcome> {
        if !self.is_free() || !line.contains('=') || is_value(line, name) {
            return None;
        }
        let asked = self.asked_now()?;
        let meant = self.meant_by(asked, line, name)?;
        let mut told = self.state.told_names.iter_mut();
        let told = told.find(|told| told.name == name)?;
        let symbol = meant.shown.trim_start_matches('−').to_owned();
        told.means = Some(Meaning {
            form: meant.form.clone(),
            shown: meant.shown.clone(),
            against: meant.against.then_some(symbol),
        });
        let said = match meant.step.filter(|_| !meant.against) {
            Some(step) => self.told_name_said(name, step),
            None => self.taken_as(name, &meant.shown),
        };
        let outcome = self.answer(asked, &put(line, name, &meant.form));
        Some(Outcome {
            message: said.then(outcome.message),
            ..outcome
        })
    }

    fn taken_as(&self, name: &str, form: &str) -> Prose {
        let slots = [
            ("name", Slot::Name(name.to_owned())),
            ("form", Slot::Name(form.to_owned())),
        ];
        self.words.say("talk.told-name-as", &slots)
    }

    /// A line with friction under its own name where she calls it f and has written F for what the
    /// problem calls F: of two letters she means two forces.
    pub(super) fn friction_under_f(&self, line: &str) -> Option<String> {
        let freely = self.state.freely.as_ref()?;
        if !self.is_symbol("F") || self.is_symbol("f") || self.is_hers("f") {
            return None;
        }
        let friction = self.only_friction().or_else(|| self.only_limit())?;
        let friction = self.key.step(friction)?;
        let letter = |c: char| c.is_alphanumeric() || c == '_';
        let is_capital = |line: &str| line.split(|c| !letter(c)).any(|word| word == "F");
        let earlier = &mut freely.lines.iter().map(|(_, line, _)| line.as_str());
        let both = earlier.chain([line]).any(is_capital);
        let symbol = friction.symbol.typed();
        let meant = with_symbol(line, "f", &symbol);
        (both && meant != line).then_some(meant)
    }

    /// The friction that a coefficient gives, where there is but one force of friction.
    pub(super) fn only_limit(&self) -> Option<StepId> {
        let steps = self.key.asked().map(|step| step.id);
        let is_friction = |id: &StepId| {
            let heading = self.key.heading(*id);
            heading.is_some_and(|heading| heading.kind == "friction")
        };
        let mut found = steps.filter(is_friction);
        found.next().filter(|_| found.next().is_none())
    }

    /// A line with what names of hers mean in their place, where it is seen to hold so.
    pub(super) fn with_meanings(&mut self, asked: StepId, line: &str) -> String {
        let way = self.put_meanings(line);
        if way == line {
            return way;
        }
        let mut meant = self.state.told_names.iter();
        let is_own = meant.any(|told| told.means.is_some() && self.is_own_name(&told.name));
        if is_own && self.judged_freely(asked, line).stands() {
            return line.to_owned();
        }
        let judgement = self.judged_freely(asked, &way);
        let stands = judgement.stands() && !counts_against(&judgement);
        match stands || !is_own && self.tells_wrong_value(asked, line) {
            true => way,
            false => line.to_owned(),
        }
    }

    /// A line that does not hold with what its name means: wrong where words told that name and a
    /// line proved its meaning, else noted.
    pub(super) fn not_seen_as_meant(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        let told = self.state.told_names.iter().find(|told| {
            told.means.is_some()
                && !self.is_own_name(&told.name)
                && !is_value(line, &told.name)
                && put(line, &told.name, "") != line
        })?;
        let shown = told.means.as_ref().map(|means| means.shown.clone());
        let in_words = !told.words.is_empty();
        let slots = [
            ("name", Slot::Name(told.name.clone())),
            ("form", Slot::Name(shown.unwrap_or_default())),
        ];
        let way = self.put_meanings(line);
        if in_words && self.judged_freely(asked, &way).truth == Truth::DoesNotHold {
            let message = self.words.say("talk.name-meant-wrong", &slots);
            let (sign, verdict) = verdict_of("wrong");
            return Some(Outcome::verdict(sign, verdict, "wrong", message));
        }
        Some(Outcome::noted(self.words.say("talk.name-meant", &slots)))
    }

    /// True for a name that she has set to something.
    pub(super) fn is_own_name(&self, name: &str) -> bool {
        let mut own = self.state.own_names.iter();
        own.any(|(known, _)| known.shown() == name)
    }

    /// True for a name of hers, set to something or told in words.
    pub(super) fn is_hers(&self, name: &str) -> bool {
        let mut told = self.state.told_names.iter();
        self.is_own_name(name) || told.any(|told| told.name == name)
    }

    fn put_meanings(&self, line: &str) -> String {
        let mut way = line.to_owned();
        for told in &self.state.told_names {
            let Some(means) = &told.means else { continue };
            if !is_value(line, &told.name) {
                way = put(&way, &told.name, &means.form);
            } else if let Some(symbol) = &means.against {
                way = turned(&way, &told.name, symbol).unwrap_or(way);
            } else if !means.form.starts_with('(') {
                way = put(&way, &told.name, &means.form);
            }
        }
        way
    }

    /// True where a line gives a quantity of the problem a value that is not its own, whatever
    /// stands between.
    fn tells_wrong_value(&mut self, asked: StepId, line: &str) -> bool {
        let (Some((name, _)), Some((_, value))) = (line.split_once('='), line.rsplit_once('='))
        else {
            return false;
        };
        let number = value.trim_start_matches([' ', '-', '−']);
        let told = self.is_symbol(name.trim()) && number.starts_with(|c: char| c.is_ascii_digit());
        told && {
            let found = self.judged_freely(asked, &format!("{name}={value}"));
            found.truth == Truth::DoesNotHold && found.evidence.alone
        }
    }

    /// The one quantity with which the line is proved.
    fn meant_by(&mut self, asked: StepId, line: &str, name: &str) -> Option<Meant> {
        let mut all = self.may_mean(line);
        let told = self
            .state
            .told_names
            .iter()
            .find(|told| told.name == name)?;
        let words = told.words.clone();
        all.retain(|meant| self.fits_way(meant, &words));
        let mut fits: Vec<Meant> = Vec::new();
        for widely in [false, true] {
            for meant in &all {
                let way = put(line, name, &meant.form);
                let judgement = match widely {
                    false => self.judged_in_force(asked, &way),
                    true => self.judged_freely(asked, &way),
                };
                if is_proved(&judgement) && !counts_against(&judgement) {
                    fits.push(meant.clone());
                }
            }
            if !fits.is_empty() {
                break;
            }
        }
        // The size of a force of one part is that part.
        if fits.len() > 1 {
            fits.retain(|meant| !meant.step.is_some_and(StepId::is_size));
        }
        match fits.as_slice() {
            [one] => Some(one.clone()),
            _ => None,
        }
    }

    /// False where the words that told a name say that it points the other way.
    fn fits_way(&self, meant: &Meant, words: &str) -> bool {
        let said = |list: &str| self.has_word(words, list);
        let ways = match meant.step.and_then(StepId::along) {
            Some(Axis::Vertical) => ["statement.up", "statement.down"],
            Some(Axis::Horizontal) => ["statement.right", "statement.left"],
            None => return true,
        };
        let [along, against] = ways.map(said);
        match meant.against {
            true => !along || against,
            false => !against || along,
        }
    }

    /// Everything that a name of hers is tried as.
    fn may_mean(&self, line: &str) -> Vec<Meant> {
        let unknowns: Vec<StepId> = self
            .key
            .steps
            .iter()
            .filter(|step| step.id.is_unknown() && !step.id.is_direction())
            .filter(|step| !step.symbol.shown().is_empty())
            .map(|step| step.id)
            .collect();
        let told = |symbol: &str| {
            let mut told = self.state.told_names.iter();
            told.any(|one| one.means.as_ref().is_some_and(|means| means.form == symbol))
        };
        let mut all = Vec::new();
        for id in &unknowns {
            let Some((typed, shown)) = self.symbols(*id) else {
                continue;
            };
            let named = put(line, &typed, "") != line;
            let by_name = |step: StepId| {
                let mut told = self.state.told_names.iter();
                told.any(|one| one.step == Some(step))
            };
            if named || told(&typed) || by_name(*id) {
                continue;
            }
            if id.has_free_sense() {
                all.push(Meant {
                    form: format!("(-{typed})"),
                    shown: format!("−{shown}"),
                    step: Some(*id),
                    against: true,
                });
            }
            all.push(Meant {
                form: typed,
                shown,
                step: Some(*id),
                against: false,
            });
        }
        let mut made = Vec::new();
        self.parts_of_forces(&unknowns, &mut made);
        self.lengths_from_places(&unknowns, &mut made);
        all.extend(made.into_iter().map(|(form, shown)| Meant {
            form,
            shown,
            step: None,
            against: false,
        }));
        all
    }

    /// A force of two parts along and across a slope that is given, and its angles with both axes.
    fn parts_of_forces(&self, unknowns: &[StepId], made: &mut Vec<(String, String)>) {
        let noun = |id: StepId| self.key.heading(id).map(|heading| heading.noun.clone());
        let one_force = |one: StepId, other: StepId| match (one, other) {
            (
                StepId::Reaction(left, Part::Along(Axis::Horizontal)),
                StepId::Reaction(right, Part::Along(Axis::Vertical)),
            ) => left == right,
            (StepId::Found(..), StepId::Found(..)) => {
                let is_force = |id| {
                    let step = self.key.step(id);
                    !StepId::is_size(id)
                        && step.is_some_and(|step| step.dimension == Dimension::FORCE)
                };
                one != other && is_force(one) && is_force(other) && noun(one) == noun(other)
            }
            _ => false,
        };
        for (at, one) in unknowns.iter().enumerate() {
            for other in unknowns.iter().skip(at + 1).chain(&unknowns[..at]) {
                let (Some(x), Some(y)) = (self.symbols(*one), self.symbols(*other)) else {
                    continue;
                };
                if !one_force(*one, *other) {
                    continue;
                }
                made.push((
                    format!("atan({}/{})", x.0, y.0),
                    format!("tan⁻¹({}/{})", x.1, y.1),
                ));
                if matches!(one, StepId::Reaction(..)) {
                    made.push((
                        format!("atan({}/{})", y.0, x.0),
                        format!("tan⁻¹({}/{})", y.1, x.1),
                    ));
                }
                for angle in self.given_symbols(Dimension::ANGLE) {
                    made.extend(along_and_across(&x, &y, &angle));
                }
            }
        }
    }

    /// A length that is sought, measured from another place, and to the side or up.
    fn lengths_from_places(&self, unknowns: &[StepId], made: &mut Vec<(String, String)>) {
        let is_length = |id: &&StepId| {
            let step = self.key.step(**id);
            step.is_some_and(|step| step.dimension == Dimension::LENGTH)
        };
        for sought in unknowns.iter().filter(is_length) {
            let Some(d) = self.symbols(*sought) else {
                continue;
            };
            for place in self.given_symbols(Dimension::LENGTH) {
                made.push((
                    format!("({} - {})", d.0, place.0),
                    format!("{} − {}", d.1, place.1),
                ));
                made.push((
                    format!("({} - {})", place.0, d.0),
                    format!("{} − {}", place.1, d.1),
                ));
            }
            for angle in self.given_symbols(Dimension::ANGLE) {
                for ratio in ["cos", "sin"] {
                    made.push((
                        format!("({}*{ratio}({}))", d.0, angle.0),
                        format!("{}·{ratio} {}", d.1, angle.1),
                    ));
                }
            }
        }
    }

    /// How a quantity is typed and shown.
    fn symbols(&self, id: StepId) -> Option<(String, String)> {
        let step = self.key.step(id)?;
        Some((step.symbol.typed(), step.symbol.shown()))
    }

    /// How the givens of a kind are typed and shown.
    fn given_symbols(&self, dimension: Dimension) -> Vec<(String, String)> {
        let givens = self.problem.givens().iter();
        let of_kind = givens.filter(|given| given.dimension == dimension);
        let of_kind = of_kind.filter(|given| !given.symbol.shown().is_empty());
        of_kind
            .map(|given| (given.symbol.typed(), given.symbol.shown()))
            .collect()
    }
}

/// The part of a force of two along or across a line at an angle, in any sense.
fn along_and_across(
    x: &(String, String),
    y: &(String, String),
    angle: &(String, String),
) -> Vec<(String, String)> {
    let mut made = Vec::new();
    for (first, second) in [("cos", "sin"), ("sin", "cos")] {
        for (one, other) in [("", "+"), ("", "-"), ("-", "+"), ("-", "-")] {
            let form = |x: &str, y: &str, angle: &str, times: &str| {
                format!("{one}{x}{times}{first}({angle}) {other} {y}{times}{second}({angle})")
            };
            let shown = form(&x.1, &y.1, &angle.1, "·").replace('-', "−");
            made.push((format!("({})", form(&x.0, &y.0, &angle.0, "*")), shown));
        }
    }
    made
}

/// True for a line in which a part counts against its axis.
fn counts_against(judgement: &Judgement) -> bool {
    judgement.remarks.iter().any(|remark| match remark {
        Remark::SensesTaken(senses) => senses.iter().any(|(_, against)| *against),
        Remark::OppositeSense => true,
        _ => false,
    })
}

/// `D = 50.4 N` as the value of a quantity that acts the other way: `H = -50.4 N`.
fn turned(line: &str, name: &str, symbol: &str) -> Option<String> {
    let (head, value) = line.split_once('=')?;
    let (_, value) = value.rsplit_once('=').unwrap_or(("", value));
    let value = value.trim();
    let is_number = value.starts_with(|c: char| c.is_ascii_digit());
    (head.trim() == name && is_number).then(|| format!("{symbol} = -{value}"))
}

/// True for a line that holds as a form, and says something.
fn is_proved(judgement: &Judgement) -> bool {
    let truth = matches!(
        judgement.truth,
        Truth::Holds | Truth::HoldsRounded | Truth::Noted
    );
    truth && judgement.proved && judgement.names.is_none() && !judgement.evidence.alone
}

/// True where a line sets the name to numbers alone.
fn is_value(line: &str, name: &str) -> bool {
    let mut statements = line.split([';']).flat_map(|part| part.split(", "));
    statements.any(|part| {
        let rest = part.trim_start().strip_prefix(name);
        let rest = rest.and_then(|rest| rest.trim_start().strip_prefix('='));
        let apart = |c: char| !c.is_alphabetic();
        rest.is_some_and(|rest| {
            let mut words = rest.split(apart).filter(|word| !word.is_empty());
            words.all(|word| OF_VALUES.contains(&word))
        })
    })
}

/// A line with a symbol of the problem in the place of a name, which at its head is told.
pub(super) fn with_symbol(line: &str, name: &str, symbol: &str) -> String {
    let meant = put(line, name, symbol);
    match meant.trim_start().strip_prefix(&format!("({symbol})")) {
        Some(rest) => format!("{symbol}{rest}"),
        None => meant,
    }
}

/// A line with a form in the place of a name, wherever that stands by itself or behind a factor.
pub(super) fn put(line: &str, name: &str, form: &str) -> String {
    let part = |c: char| c.is_alphabetic() || c == '_';
    let mut way = String::new();
    let mut from = 0;
    for (at, _) in line.match_indices(name) {
        let end = at + name.len();
        let before = line[..at].chars().next_back();
        let after = line[end..].chars().next();
        let digit = |c: char| c.is_ascii_digit() || ('₀'..='₉').contains(&c);
        if before.is_some_and(part) || after.is_some_and(|c| part(c) || digit(c)) || at < from {
            continue;
        }
        way.push_str(&line[from..at]);
        way.push('(');
        way.push_str(form);
        way.push(')');
        from = end;
    }
    way.push_str(&line[from..]);
    way
}
