//! A line of a free working that is not seen to hold, looked at once more: by the value that it
//! tells, as it may be written otherwise, as a relation of known numbers, in another unit.

use super::Session;
use super::freely_wide::is_unseen;
use crate::judge::{
    Aside, Board, Evidence, Judgement, KnownTruth, NameRole, Own, Remark, Truth, known_truth,
    links_hold, statements, types_wrong, unit_of_another_kind,
};
use crate::key::StepId;
use crate::reading::{MismatchKind, Node, Operator, Tree, read};
use crate::units::{Dimension, number_text, unit_for};

/// A unit behind a value, and those in which the number may be right.
const UNITS: [(&str, &[&str]); 5] = [
    ("N", &["kN", KILOGRAM_FORCE]),
    ("kg", &["kN", KILOGRAM_FORCE]),
    ("mm", &["cm", "m"]),
    ("cm", &["mm", "m"]),
    ("m", &["cm", "mm"]),
];
/// The weight of a kilogram, which with the g of the problem is a round number.
const KILOGRAM_FORCE: &str = "kgf";

/// A value told with its name counts without its way up to this share from the value in full.
const FARTHEST: f64 = 0.02;

/// Numbers nearer than this share of them are one.
const EXACT: f64 = 1e-9;

/// The most places at which a factor of one metre is looked for in a line.
const MOST_PLACES: usize = 10;

impl Session {
    /// A line judged by the right key alone, or else beside her own wrong values, and looked at
    /// once more where it is not seen to hold.
    pub(super) fn judged_freely(&mut self, asked: StepId, line: &str) -> Judgement {
        let found = self.judged_by_itself(asked, line);
        let worked = self.worked_from(asked, line, &found).unwrap_or(found);
        let again = self.own_mistake_again(asked, line, &worked);
        let judged = self.not_said_again(line, again.unwrap_or(worked));
        self.refused_by_form(judged)
    }

    /// The same with the line as it stands, whatever its numbers were worked out from.
    pub(super) fn judged_by_itself(&mut self, asked: StepId, line: &str) -> Judgement {
        let found = self.judged_in_force(asked, line);
        if let Some(noted) = self.plain_sum(line, &found) {
            return noted;
        }
        if let Some(wrong) = self.of_another_kind(line, &found) {
            return wrong;
        }
        let turned = self.own_turned_again(line, &found);
        if let Some(again) = turned.or_else(|| self.own_refused_again(asked, line, &found)) {
            return again;
        }
        if self.is_mended_value(&found) {
            return refused(found);
        }
        if found.stands() {
            return self.by_chance_of_hers(line, &found).unwrap_or(found);
        }
        // In what is looked at below no way is read.
        if found.evidence.wrong_way {
            return found;
        }
        let in_her_sense = self.true_in_her_sense(line, &found);
        let judgement = in_her_sense
            .or_else(|| self.with_parts_turned(asked, line, &found))
            .or_else(|| self.balance_of_refused(asked, line, &found))
            .or_else(|| self.with_masses_meant(asked, line, &found))
            .or_else(|| self.by_right_relation(asked, line, &found))
            .or_else(|| self.by_value_told(asked, line, &found))
            .or_else(|| self.written_otherwise(asked, line, &found))
            .or_else(|| self.by_own_name(asked, line, &found))
            .or_else(|| self.by_own_multiple(asked, line, &found))
            .or_else(|| self.with_name_last(asked, line, &found))
            .or_else(|| self.with_one_metre(asked, line, &found))
            .or_else(|| self.with_a_metre_dropped(asked, line, &found))
            .or_else(|| self.given_told_by(asked, line, &found))
            .or_else(|| self.as_whole_area(asked, line, &found))
            .or_else(|| self.seen_widely(asked, line, &found))
            .or_else(|| self.after_the_balance(line, &found))
            .or_else(|| self.true_of_known(line, &found))
            .or_else(|| self.by_own_named(asked, line, &found))
            .or_else(|| self.by_own_sum(asked, line, &found))
            .or_else(|| self.by_own_relation(line, &found))
            .or_else(|| self.by_her_gravity(asked, line, &found))
            .or_else(|| self.true_of_hers(line, &found))
            .or_else(|| self.solves_her_line(line, &found))
            .or_else(|| self.in_another_unit(asked, line, &found))
            .or_else(|| self.rounded_hard_widely(asked, line, &found))
            .or_else(|| self.by_member_length(asked, line, &found))
            .or_else(|| self.with_bare_lengths(asked, line, &found))
            .or_else(|| self.as_balance(asked, line, &found));
        let judgement = judgement.unwrap_or(found);
        let by_chance = self.by_chance_of_hers(line, &judgement);
        by_chance.unwrap_or(judgement)
    }

    /// True for a wrong value that she has replaced by the right one: it follows from nothing any
    /// more, not even from what was once made of it.
    fn is_mended_value(&self, judgement: &Judgement) -> bool {
        let target = judgement.target;
        let right = self.state.standing.get(&target);
        let right = right.is_some_and(|own| own.right && own.line > 0);
        let follows = judgement.evidence.alone && matches!(judgement.truth, Truth::Follows(_));
        let Some(freely) = self.state.freely.as_ref().filter(|_| right && follows) else {
            return false;
        };
        // What only followed from another wrong value of hers may follow from that again.
        let refused = freely.lines.iter().filter(|(.., truth)| *truth == "wrong");
        let mut mended = refused.filter_map(|(at, ..)| freely.void.get(at)).flatten();
        mended.any(|(step, old)| {
            let mut hers = judgement.values.iter().filter(|(id, _)| id == step);
            *step == target && hers.any(|(_, own)| is_same(own, old))
        })
    }

    /// `H = sqrt(997^2 + 203^2) = 1017.5 N`: the value that is told with its name, where the form
    /// comes to it and cannot be traced.
    pub(super) fn by_value_told(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let unseen = |remark: &Remark| matches!(remark, Remark::NotSeen | Remark::HoldsHere);
        let unseen = found.truth == Truth::Noted && found.remarks.iter().any(unseen);
        if !unseen || found.target.is_balance() || self.types_wrong(found.target, line) {
            return None;
        }
        let (name, rest) = line.split_once('=')?;
        let (_, value) = rest.rsplit_once('=')?;
        if !self.beside_right_alone(|session| session.has_true_links(line)) {
            return None;
        }
        let mut told = self.judged_in_force(asked, &format!("{name}={value}"));
        let is_value = told.truth.holds() && told.evidence.alone && told.target == found.target;
        // What only the room of a small difference lets stand is not counted without its way.
        let far = |own: &Own| {
            let of = own.function[0].abs();
            (own.value.abs() - of).abs() > FARTHEST * of
        };
        if !is_value || told.names.is_some() || told.values.iter().any(|(_, own)| far(own)) {
            return None;
        }
        told.layout.clone_from(&found.layout);
        told.remarks.push(Remark::NotSeen);
        Some(told)
    }

    /// `psi = a` with a number that she called a: the value that is told so.
    fn by_own_name(&mut self, asked: StepId, line: &str, found: &Judgement) -> Option<Judgement> {
        let (name, own) = line.split_once('=')?;
        let own = own.trim();
        let mut known = self.state.own_names.iter();
        let (_, own) = known.find(|(symbol, _)| symbol.as_str() == own || symbol.shown() == own)?;
        if own.of_unknown || own.of_open_weight || !(self.is_symbol(name.trim())) {
            return None;
        }
        let value = number_text(own.value);
        let unit = unit_for(own.dimension).filter(|_| !own.bare);
        let told = match (own.dimension, unit) {
            (Dimension::ANGLE, Some(_)) => format!("{name} = {value} rad"),
            (_, Some(unit)) => format!("{name} = {value} {}", unit.symbol),
            _ => format!("{name} = {value}"),
        };
        let mut judgement = self.judged_in_force(asked, &told);
        if !judgement.truth.holds() {
            return None;
        }
        judgement.layout.clone_from(&found.layout);
        Some(judgement)
    }

    /// A line with another way of writing for what is read otherwise: `43.3 kgf` with the g of this
    /// problem, and a colon that divides.
    fn written_otherwise(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let comma = !line.contains('.') && line.contains(',');
        let in_newtons = line.replace(KILOGRAM_FORCE, &self.weight_of_one(comma));
        let ways = [in_newtons, divided(line), without_pi(line), squares(line)];
        ways.into_iter().filter(|way| way != line).find_map(|way| {
            let judgement = self.judged_in_force(asked, &way);
            match judgement.stands() {
                true => Some(judgement),
                false => self
                    .by_value_told(asked, &way, &judgement)
                    .or_else(|| self.true_of_known(&way, found)),
            }
        })
    }

    /// `58.8 cos 40 = 1.4 P` where the arm is one metre: a factor that changes no number and is
    /// seldom written. Only a form in numbers that is proved with it counts; among names a length
    /// would stand with its own.
    fn with_one_metre(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let unseen = found.truth == Truth::Noted && !found.proved && found.names.is_none();
        // A value, or what a sign and a word say twice, lacks no factor.
        let is_form = !found.evidence.alone && !found.remarks.contains(&Remark::SignAndWay);
        if !unseen || !is_form || !self.lacks_a_factor(line) || !self.names_unknowns_only(line) {
            return None;
        }
        with_a_factor(line).into_iter().find_map(|way| {
            let mut judgement = self.judged_in_force(asked, &way);
            let holds = matches!(judgement.truth, Truth::Holds | Truth::HoldsRounded);
            if !holds || !judgement.proved || judgement.names.is_some() {
                return None;
            }
            judgement.layout.clone_from(&found.layout);
            Some(judgement)
        })
    }

    /// `b² - b - 6 = 5.7`, where the length that stands with b comes to one metre: noted at least,
    /// if the unknown comes out right with it.
    fn with_a_metre_dropped(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let Truth::Mismatched(mismatch) = &found.truth else {
            return None;
        };
        if mismatch.kind != MismatchKind::Sum || !self.names_unknowns_only(line) {
            return None;
        }
        with_a_factor(line).into_iter().find_map(|way| {
            let mut judgement = self.judged_in_force(asked, &way);
            let right = matches!(judgement.truth, Truth::Holds | Truth::HoldsRounded);
            let comes_right = is_unseen(&judgement) && judgement.names.is_none();
            (right || comes_right).then(|| {
                judgement.layout.clone_from(&found.layout);
                judgement
            })
        })
    }

    /// True for a sum of which some term has fewer factors than another, sines and cosines aside.
    fn lacks_a_factor(&self, line: &str) -> bool {
        let readings = read(line, self.names().vocabulary());
        let counts = readings.ok().and_then(|all| {
            let first = all.into_iter().next()?;
            Some(first.sides.iter().flat_map(factors).collect::<Vec<usize>>())
        });
        counts.is_some_and(|counts| counts.iter().min() != counts.iter().max())
    }

    /// True for a form in numbers, in which no names stand but those of unknowns.
    fn names_unknowns_only(&self, line: &str) -> bool {
        let names = self.names();
        let Ok(readings) = read(line, names.vocabulary()) else {
            return false;
        };
        let first = readings.first().filter(|reading| reading.defines.is_none());
        let mut sides = first.into_iter().flat_map(|reading| &reading.sides);
        let leaf = |side: &Tree| matches!(side.node, Node::Literal(_) | Node::Name(_));
        let bare = |side: &Tree| match &side.node {
            Node::Negative(inner) => leaf(inner),
            _ => leaf(side),
        };
        if sides.clone().all(bare) {
            return false;
        }
        // g changes no length.
        let unknown = |id| match names.role(id) {
            Some(NameRole::Step(step)) => step.is_unknown(),
            role => role == Some(NameRole::Gravity),
        };
        first.is_some() && sides.all(|side| side.names().iter().all(|(id, _)| unknown(*id)))
    }

    /// What stands for `kgf` behind a number.
    fn weight_of_one(&self, comma: bool) -> String {
        let gravity = number_text(self.problem.gravity());
        match comma {
            true => format!("*{} N", gravity.replace('.', ",")),
            false => format!("*{gravity} N"),
        }
    }

    /// A line that is true of known numbers, and no answer: no form of a known mistake stands in it.
    fn true_of_known(&mut self, line: &str, found: &Judgement) -> Option<Judgement> {
        if found.truth == Truth::Noted {
            return None;
        }
        let truth = self.known_truth(line)?;
        let mut judgement = found.clone();
        judgement.truth = Truth::DoesNotHold;
        judgement.evidence.aside = Some(Aside::True);
        judgement.value = None;
        judgement.names = None;
        judgement.remarks.clear();
        if truth != KnownTruth::OfNames {
            judgement.remarks.push(Remark::OfNumbers);
        }
        Some(judgement)
    }

    /// `1.2 S = 4998` where she counts S the other way round than the key: true of her own values in
    /// her own senses.
    fn true_in_her_sense(&mut self, line: &str, found: &Judgement) -> Option<Judgement> {
        if !self.is_general() || found.truth == Truth::Noted {
            return None;
        }
        let truth = self.beside_right_alone(|session| {
            let (names, own_values) = (session.names(), session.own_values());
            let standing = session.state.standing.iter();
            let turned = standing.filter(|(_, own)| own.against);
            let turned: Vec<StepId> = turned.map(|(step, _)| *step).collect();
            let board = Board {
                turned: &turned,
                ..session.board(&names, &own_values)
            };
            (!turned.is_empty()).then(|| known_truth(&board, line))?
        });
        (truth? == KnownTruth::OfNames).then(|| Judgement {
            layout: found.layout.clone(),
            ..Judgement::noted_true(found.target)
        })
    }

    /// What a line says of known numbers; of several statements all must be true.
    pub(super) fn known_truth(&mut self, line: &str) -> Option<KnownTruth> {
        self.beside_right_alone(|session| {
            let (names, own_values) = (session.names(), session.own_values());
            let board = session.board(&names, &own_values);
            let spans = statements(line);
            let mut said = spans
                .iter()
                .map(|span| known_truth(&board, &line[span.start..span.end]));
            let first = said.next()??;
            said.try_fold(first, |all, one| {
                let one = one?;
                Some(if one == all {
                    all
                } else {
                    KnownTruth::OfNumbers
                })
            })
        })
    }

    /// A form of names that comes to the number, with a unit of another kind behind it.
    fn of_another_kind(&mut self, line: &str, found: &Judgement) -> Option<Judgement> {
        let (wanted, found_kind) = self.beside_right_alone(|session| {
            let (names, own_values) = (session.names(), session.own_values());
            unit_of_another_kind(&session.board(&names, &own_values), line)
        })?;
        if matches!(found.truth, Truth::WrongUnit { .. }) {
            return Some(found.clone());
        }
        let mut wrong = Judgement::noted_true(found.target);
        wrong.truth = Truth::WrongUnit {
            wanted,
            found: found_kind,
        };
        wrong.proved = false;
        wrong.evidence = Evidence::default();
        wrong.evidence.false_equation = true;
        wrong.layout.clone_from(&found.layout);
        Some(wrong)
    }

    /// A value that would be right with another unit behind it.
    fn in_another_unit(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        if !matches!(found.truth, Truth::DoesNotHold | Truth::WrongUnit { .. }) {
            return None;
        }
        let line = line.trim_end().trim_end_matches('.');
        let is_end = |stem: &str| stem.ends_with(|c: char| c.is_ascii_digit() || c == ' ');
        let (stem, others) = UNITS.iter().find_map(|(unit, others)| {
            let stem = line.strip_suffix(unit).filter(|stem| is_end(stem))?;
            Some((stem, *others))
        })?;
        let comma = !line.contains('.') && line.contains(',');
        // Of a form the unit is that of its last number: `N = W − 0.3 N`.
        let value = stem.rsplit('=').next().unwrap_or(stem).trim();
        let sign = ['-', '−', '+'];
        let digit = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | ' ');
        let alone = stem.matches('=').count() == 1;
        let is_value = alone && value.trim_start_matches(sign).chars().all(digit);
        let others = others
            .iter()
            .filter(|unit| is_value || **unit != KILOGRAM_FORCE);
        others.copied().find_map(|unit| {
            let told = match unit {
                KILOGRAM_FORCE => format!("{stem}{}", self.weight_of_one(comma)),
                unit => format!("{stem}{unit}"),
            };
            let right = self.beside_right_alone(|session| session.judged_anywhere(asked, &told));
            // With a factor that nobody knows the value agrees, and its way is not seen.
            let agrees = unit == KILOGRAM_FORCE
                && right.truth == Truth::Noted
                && right.remarks.contains(&Remark::NotSeen);
            let holds = agrees || matches!(right.truth, Truth::Holds | Truth::HoldsRounded);
            let step = self.key.step(right.target)?;
            let named = stem.contains('=') && right.names.is_none() && !right.target.is_balance();
            // The number of a mass for its weight is another thought.
            let mass = unit == KILOGRAM_FORCE && right.target.is_weight();
            (holds && named && !mass).then(|| {
                let mut wrong = wrong_unit(right, step.dimension, unit);
                // The line is shown as it was typed, not as it would be right.
                wrong.layout.clone_from(&found.layout);
                wrong
            })
        })
    }

    /// True if a wrong value of hers is typed in a line, that of the target apart.
    fn types_wrong(&self, target: StepId, line: &str) -> bool {
        let (names, own_values) = (self.names(), self.own_values());
        types_wrong(&self.board(&names, &own_values), target, line)
    }

    pub(super) fn has_true_links(&self, line: &str) -> bool {
        let (names, own_values) = (self.names(), self.own_values());
        links_hold(&self.board(&names, &own_values), line)
    }
}

/// True for one value, told in one sense.
fn is_same(one: &Own, other: &Own) -> bool {
    let in_sense = |own: &Own| own.value.abs().copysign(own.function[0]);
    (in_sense(one) - in_sense(other)).abs() <= EXACT * one.value.abs()
}

/// A line that would follow, refused.
fn refused(judgement: Judgement) -> Judgement {
    Judgement {
        truth: Truth::DoesNotHold,
        proved: false,
        values: Vec::new(),
        establishes: Vec::new(),
        remarks: Vec::new(),
        value: None,
        ..judgement
    }
}

/// A judgement of a value that is right in `unit`, as one of the line in which another stands.
fn wrong_unit(right: Judgement, dimension: Dimension, unit: &'static str) -> Judgement {
    let mut judgement = Judgement {
        truth: Truth::WrongUnit {
            wanted: dimension,
            found: dimension,
        },
        proved: false,
        values: Vec::new(),
        establishes: Vec::new(),
        remarks: Vec::new(),
        value: None,
        caret: None,
        ..right
    };
    judgement.evidence.right_in = Some(unit);
    judgement
}

/// `7π/36 rad`: a line with such a share of π as a number.
fn without_pi(line: &str) -> String {
    let Some(at) = line.find('π') else {
        return line.to_owned();
    };
    let digit = |c: char| c.is_ascii_digit();
    let before = line[..at].trim_end_matches(['·', '*', ' ']);
    let from = before.trim_end_matches(digit).len();
    let behind = &line[at + 'π'.len_utf8()..];
    let under = behind.trim_start().strip_prefix('/').map(str::trim_start);
    let under = under.map_or("", |under| {
        &under[..under.len() - under.trim_start_matches(digit).len()]
    });
    let times = before[from..].parse().unwrap_or(1.0);
    let (Ok(by), false) = (
        under.parse::<f64>(),
        line[at + 'π'.len_utf8()..].contains('π'),
    ) else {
        return line.to_owned();
    };
    let rest = behind
        .find(under)
        .map_or("", |start| &behind[start + under.len()..]);
    let number = times * std::f64::consts::PI / by;
    // A decimal comma stays one.
    let number = format!("{number:.6}");
    let comma = line.contains(',') && !line.contains('.');
    let number = if comma {
        number.replace('.', ",")
    } else {
        number
    };
    format!("{}{number}{rest}", &before[..from])
}

/// A line with a factor of one before each of its terms in turn.
fn with_a_factor(line: &str) -> Vec<String> {
    let signs = line
        .char_indices()
        .filter(|(_, c)| matches!(c, '=' | '+' | '-' | '−' | '('))
        .map(|(at, c)| at + c.len_utf8());
    let places = std::iter::once(0).chain(signs).take(MOST_PLACES);
    let with = |at| format!("{}1*{}", &line[..at], &line[at..]);
    places.map(with).collect()
}

/// `1.5² + 1.6² kN²`: a line with the unit of each square beside its number. A unit in brackets is
/// of any kind, and makes a line readable; that is another matter (`unit_of_all` of besides.rs).
fn squares(line: &str) -> String {
    let end = line.trim_end();
    let cut = ["²", "^2"].iter().find_map(|two| end.strip_suffix(two));
    let Some((sum, unit)) = cut.and_then(|stem| {
        let at = stem.trim_end_matches(char::is_alphabetic).len();
        (at < stem.len()).then(|| stem.split_at(at))
    }) else {
        return line.to_owned();
    };
    let (mut way, mut rest, mut any) = (String::new(), sum, false);
    while let Some(at) = rest.find(|c: char| c.is_ascii_digit()) {
        let number = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
        let behind = rest[at..].trim_start_matches(number);
        let typed = &rest[at..rest.len() - behind.len()];
        way.push_str(&rest[..at]);
        // The digit of a name is no number.
        let named = way.ends_with(|c: char| c.is_alphabetic() || c == '_');
        let square = !named && (behind.starts_with('²') || behind.starts_with("^2"));
        any |= square;
        match square {
            true => way.push_str(&format!("({typed} {unit})")),
            false => way.push_str(typed),
        }
        let power = if behind.starts_with("^2") { "^2" } else { "" };
        way.push_str(power);
        rest = &behind[power.len()..];
    }
    match any {
        true => way + rest,
        // The unit of what is no square is told wrongly.
        false => line.to_owned(),
    }
}

/// `550,76:1,4`: a line with its colons between two numbers or names for strokes.
fn divided(line: &str) -> String {
    let chars: Vec<char> = line.chars().collect();
    let side = |found: Option<&char>| found.is_some_and(|c| c.is_alphanumeric());
    let divides = |at: usize| {
        let before = chars[..at].iter().rev().find(|c| **c != ' ');
        let after = chars[at + 1..].iter().find(|c| **c != ' ');
        chars[at] == ':' && side(before) && side(after)
    };
    let letter = |at: usize| if divides(at) { '/' } else { chars[at] };
    (0..chars.len()).map(letter).collect()
}

/// How many factors each term of a sum has, sines and cosines aside.
fn factors(side: &Tree) -> Vec<usize> {
    match &side.node {
        Node::Binary(Operator::Add | Operator::Subtract, left, right) => {
            [factors(left), factors(right)].concat()
        }
        Node::Binary(Operator::Multiply, left, right) => {
            let all = [factors(left), factors(right)];
            let most = all.iter().map(|terms| terms.iter().max().copied());
            vec![most.flatten().sum()]
        }
        Node::Binary(_, left, _) => factors(left),
        Node::Negative(inner) => factors(inner),
        Node::Call(..) => vec![0],
        Node::Literal(zero) if zero.value == 0.0 => Vec::new(),
        Node::Literal(_) | Node::Name(_) => vec![1],
    }
}
