//! Statements in words of which way a force acts: "the upper hinge pushes the gate up", "J points
//! 65.5° from the vertical", "the tie is pressed", "the floor is smooth". A sentence is read only
//! where each of its words is, and is wrong only where it is so in every reading.

use super::acting::{Exerted, OnBody, Way};
use super::turn::{Sign, verdict_of};
use super::worded_fit::{Against, Fit, Said, fits, in_each};
use super::{Outcome, Session};
use crate::judge::Truth;
use crate::key::StepId;
use crate::text::Slot;

/// Which forces a sentence is about.
struct Subject {
    /// Places among the forces of the problem.
    forces: Vec<usize>,
    /// A noun alone: what exerts the forces, which may be a thing that lies somewhere.
    by_noun: bool,
    /// The body that the noun is of: it acts back on what acts on it.
    body: Option<String>,
    /// "It": the force whose direction is sought, if that is meant.
    vague: bool,
}

impl Subject {
    fn force(at: usize) -> Subject {
        Subject {
            forces: vec![at],
            by_noun: false,
            body: None,
            vague: false,
        }
    }
}

/// A sentence word by word, and how far it is read.
struct Words<'l> {
    all: Vec<&'l str>,
    at: usize,
}

impl Session {
    /// The answer to a sentence on which way a force acts, in a free working; `None` where it is
    /// not surely read, or not surely true or false.
    pub(super) fn answer_worded(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        // Where what is sought has several values a force may act otherwise at another.
        if !self.others.is_empty() {
            return None;
        }
        if line.contains('=') && self.is_general() {
            let side = ["statement.above", "statement.below"];
            let told = side.iter().any(|key| self.has_word(line, key));
            let outcome = told
                .then(|| self.direction_with_side(asked, line))
                .flatten();
            if outcome.is_some() {
                return outcome;
            }
        }
        let verbs = ["worded.points", "worded.lies"];
        if !verbs.iter().any(|key| self.has_word(line, key)) {
            return None;
        }
        let forces = self.exerted();
        let text = line.trim().trim_end_matches('.').replace(", ", " ");
        let mut words = Words::of(&text);
        while self.passes(&mut words, "worded.opening") {}
        let subject = self.subject(&mut words, &forces)?;
        if let Some(fit) = self.state_told(&mut words, &subject, &forces) {
            return self.worded(
                asked,
                fit,
                &forces[subject.forces[0]],
                "worded.nature-wrong",
            );
        }
        if self.is_told_smooth(&mut words, &subject, &forces) {
            let noun = forces[subject.forces[0]].noun.clone();
            let slots = [("noun", Slot::Word(noun))];
            let message = self.words.say("worded.rough-wrong", &slots);
            return Some(self.worded_wrong(asked, message));
        }
        self.acting_told(asked, &mut words, subject, &forces)
    }

    /// `pushes the gate up`, `acts at 30° to the vertical`: a verb, perhaps on what, and the way.
    fn acting_told(
        &mut self,
        asked: StepId,
        words: &mut Words<'_>,
        subject: Subject,
        forces: &[Exerted],
    ) -> Option<Outcome> {
        let strong = self.passes(words, "worded.points");
        if !(strong || self.passes(words, "worded.lies")) {
            return None;
        }
        let (subject, on, back) = self.object(words, subject, forces)?;
        let said = self.said_of_way(words)?;
        let angle = said.iter().any(|one| matches!(one, Said::Angle(..)));
        let first = &forces[*subject.forces.first()?];
        // "The ladder makes 65° with the floor", "the wall is upright": of things, not of forces.
        let of_line = !subject.by_noun || matches!(first.kind, "pull" | "line");
        let weighs = angle && subject.by_noun && first.kind == "weight";
        if weighs || !(strong || angle && of_line) {
            return None;
        }
        let ways = readings(forces, &subject.forces, on.as_deref(), back);
        let fit = in_each(ways.iter().map(|way| fits(&said, *way)));
        if subject.vague && fit == Fit::False {
            return None;
        }
        let key = match angle {
            true => "worded.angle-wrong",
            false => "worded.way-wrong",
        };
        if let (Fit::True, true, false, Some(direction)) = (fit, angle, back, first.direction)
            && let Some(outcome) = self.direction_told(asked, direction, &said)
        {
            return Some(outcome);
        }
        self.worded(asked, fit, first, key)
    }

    /// What is said of a sentence that is true or false.
    fn worded(&mut self, asked: StepId, fit: Fit, force: &Exerted, key: &str) -> Option<Outcome> {
        let slots = [("force", Slot::Name(force.symbol.clone()))];
        match fit {
            Fit::Open => None,
            Fit::True => Some(Outcome::noted(self.words.say("worded.true", &slots))),
            Fit::False => {
                let message = self.words.say(key, &slots);
                Some(self.worded_wrong(asked, message))
            }
        }
    }

    fn worded_wrong(&mut self, asked: StepId, message: crate::text::Prose) -> Outcome {
        self.state.open = None;
        self.miss(asked, None);
        Outcome::verdict(Sign::Wrong, "verdict.wrong", "wrong", message)
    }

    /// A true direction told in a sentence settles it, where it is a step.
    fn direction_told(&mut self, asked: StepId, id: StepId, said: &[Said]) -> Option<Outcome> {
        let mut told = format!("{} = ", self.key.step(id)?.symbol.typed());
        let angle = said.iter().find_map(|one| match one {
            Said::Angle(degrees, _, Against::Level) => Some(format!("{degrees}°")),
            Said::Angle(degrees, _, Against::Upright) => Some(format!("90° - {degrees}°")),
            _ => None,
        })?;
        told.push_str(&angle);
        for one in said {
            let way = match one {
                Said::Left => "solve.left",
                Said::Right => "solve.right",
                Said::Up => "solve.up",
                Said::Down => "solve.down",
                _ => continue,
            };
            told.push(' ');
            told.push_str(&self.words.word(way));
        }
        let right = |sign| matches!(sign, Sign::Right | Sign::Rounded | Sign::Follows);
        let judged = self.beside_right_alone(|session| session.judged(asked, &told));
        let outcome = judged.truth.holds().then(|| self.answer(asked, &told));
        outcome.filter(|outcome| right(outcome.sign))
    }

    /// `ψ = 57.7° above the horizontal`: the only direction of a problem under its usual name, with
    /// the side and the line that it is told with, where no force lies so.
    fn direction_with_side(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        let forces = &self.exerted();
        let (head, _) = line.split_once('=')?;
        let head = head.trim();
        let own = |(name, _): &(crate::text::Symbol, _)| name.matches(head);
        if !matches!(head, "ψ" | "psi") || self.state.own_names.iter().any(own) {
            return None;
        }
        let mut directed = forces.iter().filter(|force| force.direction.is_some());
        let first = directed.next().filter(|_| directed.next().is_none())?;
        let (_, value) = line.rsplit_once('=')?;
        let text = value.trim().trim_end_matches('.').replace(", ", " ");
        let said = self.said_of_way(&mut Words::of(&text))?;
        if said.len() < 2 {
            return None;
        }
        let ways = forces.iter().flat_map(|force| &force.on);
        let ways = ways.flat_map(|on| &on.ways);
        match in_each(ways.map(|way| fits(&said, *way))) {
            Fit::False => self.worded(asked, Fit::False, first, "worded.angle-wrong"),
            _ => None,
        }
    }

    /// Which forces the words name, behind an article and "the force of".
    fn subject(&self, words: &mut Words<'_>, forces: &[Exerted]) -> Option<Subject> {
        if let Some(symbol) = self.symbol_said(words, forces) {
            return Some(symbol);
        }
        if self.passes(words, "worded.it") {
            let mut all = forces.iter().enumerate();
            let mut directed = all.by_ref().filter(|(_, force)| force.direction.is_some());
            let (at, _) = directed.next().filter(|_| directed.next().is_none())?;
            let it = Subject::force(at);
            return Some(Subject { vague: true, ..it });
        }
        self.passes(words, "general.article");
        let by = self.passes(words, "worded.by");
        if by {
            self.passes(words, "general.article");
        } else {
            self.passes(words, "worded.thing");
            if let Some(symbol) = self.symbol_said(words, forces) {
                return Some(symbol);
            }
        }
        let token = words.next()?;
        if self.is_in("own.friction", &token.to_lowercase()) && !by {
            let rub = |(_, force): &(usize, &Exerted)| force.kind == "friction";
            let mut all = forces.iter().enumerate().filter(rub);
            let (at, _) = all.next().filter(|_| all.next().is_none())?;
            words.at += 1;
            self.passes(words, "worded.thing");
            return Some(Subject::force(at));
        }
        let named = self.noun(words, forces)?;
        let after = self.passes(words, "worded.after");
        Some(Subject {
            by_noun: !by && !after,
            ..named
        })
    }

    /// A force by its name, where that is no name of her own.
    fn symbol_said(&self, words: &mut Words<'_>, forces: &[Exerted]) -> Option<Subject> {
        let token = words.next()?;
        let known =
            |force: &Exerted| force.symbol == token || force.symbol.replace('_', "") == token;
        let mut own = self.state.own_names.iter();
        if own.any(|(name, _)| name.matches(token)) {
            return None;
        }
        let at = forces.iter().position(known)?;
        words.at += 1;
        Some(Subject::force(at))
    }

    /// The forces of what is said by its noun, or the body that is.
    fn noun(&self, words: &mut Words<'_>, forces: &[Exerted]) -> Option<Subject> {
        let bodies = forces.iter().flat_map(|force| &force.on);
        let bodies = bodies.map(|on| on.body.to_lowercase());
        let nouns = forces.iter().map(|force| force.noun.clone());
        let all = nouns.chain(bodies).filter(|noun| !noun.is_empty());
        // "The push of the pin", where the language has an ending for it.
        let endings = self.words.word("worded.genitive");
        let stands = |noun: &String| {
            let mut endings = endings.split(',').map(str::trim);
            words.starts(noun) || endings.any(|ending| words.starts(&format!("{noun}{ending}")))
        };
        let found = all.filter(stands).max_by_key(String::len)?;
        words.at += found.split_whitespace().count();
        let at = |(at, force): (usize, &Exerted)| (force.noun == found).then_some(at);
        let mut on = forces.iter().flat_map(|force| &force.on);
        let is_body = on.any(|on| on.body.to_lowercase() == found);
        Some(Subject {
            forces: forces.iter().enumerate().filter_map(at).collect(),
            by_noun: true,
            body: is_body.then_some(found),
            vague: false,
        })
    }

    /// What the subject acts on: one of its bodies, or where the subject is a body what acts on it,
    /// which it acts back on. The forces that this is about, the body on which they act, and whether
    /// the sentence is of the reverse of them.
    fn object(
        &self,
        words: &mut Words<'_>,
        subject: Subject,
        forces: &[Exerted],
    ) -> Option<(Subject, Option<String>, bool)> {
        let start = words.at;
        self.passes(words, "worded.on");
        self.passes(words, "general.article");
        let on = |at: &usize, body: &String| {
            let mut on = forces[*at].on.iter();
            on.any(|on| on.body.to_lowercase() == *body)
        };
        let acts = subject.body.is_none() && !subject.forces.is_empty();
        let Some(object) = words.next().and_then(|_| self.noun(words, forces)) else {
            words.at = start;
            return acts.then_some((subject, None, false));
        };
        if let Some(body) = object.body {
            let all = subject.forces.iter().all(|at| on(at, &body));
            return (acts && all).then_some((subject, Some(body), false));
        }
        let body = subject.body?;
        let all = !object.forces.is_empty() && object.forces.iter().all(|at| on(at, &body));
        all.then_some((object, Some(body), true))
    }

    /// `is pressed`, `is in tension`, to the end: whether that holds of a rope.
    fn state_told(
        &self,
        words: &mut Words<'_>,
        subject: &Subject,
        forces: &[Exerted],
    ) -> Option<Fit> {
        let [only] = subject.forces.as_slice() else {
            return None;
        };
        let force = forces.get(*only).filter(|force| force.only_pulls)?;
        let start = words.at;
        let by_noun = subject.by_noun && subject.body.is_none();
        let is = by_noun && self.passes(words, "worded.is");
        let pressed = is && self.passes(words, "worded.pressed");
        let stretched = is && !pressed && self.passes(words, "worded.stretched");
        if !(pressed || stretched) || words.next().is_some() || force.on.is_empty() {
            words.at = start;
            return None;
        }
        Some(if stretched { Fit::True } else { Fit::False })
    }

    /// `is smooth`, of a contact at which friction acts.
    fn is_told_smooth(&self, words: &mut Words<'_>, subject: &Subject, forces: &[Exerted]) -> bool {
        let rub = |at: &usize| forces[*at].kind == "friction";
        let start = words.at;
        let rubs = subject.by_noun && subject.forces.iter().any(rub);
        let is = rubs && self.passes(words, "worded.is");
        let smooth = is && self.passes(words, "worded.smooth") && words.next().is_none();
        if !smooth {
            words.at = start;
        }
        // Several contacts of one noun may differ.
        let act = |at: &usize| &forces[*at].act;
        let one = subject
            .forces
            .iter()
            .all(|at| act(at) == act(&subject.forces[0]));
        smooth && one
    }

    /// The ways and the angle that the rest of a sentence tells; `None` where more is said.
    fn said_of_way(&self, words: &mut Words<'_>) -> Option<Vec<Said>> {
        const WAYS: [(&str, &[Said]); 12] = [
            ("statement.straight-up", &[Said::Up, Said::Upright]),
            ("statement.straight-down", &[Said::Down, Said::Upright]),
            ("statement.upper-left", &[Said::Up, Said::Left]),
            ("statement.upper-right", &[Said::Up, Said::Right]),
            ("statement.lower-left", &[Said::Down, Said::Left]),
            ("statement.lower-right", &[Said::Down, Said::Right]),
            ("statement.up", &[Said::Up]),
            ("statement.down", &[Said::Down]),
            ("statement.left", &[Said::Left]),
            ("statement.right", &[Said::Right]),
            ("worded.level", &[Said::Level]),
            ("worded.upright", &[Said::Upright]),
        ];
        let mut said = Vec::new();
        while words.next().is_some() {
            if let Some(angle) = self.angle_told(words) {
                said.extend(angle);
                continue;
            }
            let between = [
                "statement.and",
                "statement.to",
                "general.article",
                "statement.at",
            ];
            while between.iter().any(|key| self.passes(words, key)) {}
            if let Some(angle) = self.angle_told(words) {
                said.extend(angle);
                continue;
            }
            let way = WAYS.iter().find(|(key, _)| self.passes(words, key));
            said.extend_from_slice(way?.1);
        }
        (!said.is_empty()).then_some(said)
    }

    /// `at 51.3° above the horizontal`, `15° with the vertical`.
    fn angle_told(&self, words: &mut Words<'_>) -> Option<Vec<Said>> {
        let start = words.at;
        let told = self.angle_at(words);
        if told.is_none() {
            words.at = start;
        }
        told
    }

    fn angle_at(&self, words: &mut Words<'_>) -> Option<Vec<Said>> {
        if !self.passes(words, "worded.at-angle") {
            self.passes(words, "statement.at");
        }
        let (degrees, half) = self.degrees(words)?;
        let side = match () {
            () if self.passes(words, "statement.above") => Some(Said::Up),
            () if self.passes(words, "statement.below") => Some(Said::Down),
            () => None,
        };
        if side.is_none() && !self.passes(words, "worded.from") {
            return None;
        }
        self.passes(words, "general.article");
        let against = match () {
            () if self.passes(words, "worded.ground") => Against::Level,
            () if self.passes(words, "statement.horizontal") => Against::Level,
            () if side.is_none() && self.passes(words, "statement.vertical") => Against::Upright,
            () => return None,
        };
        let angle = Said::Angle(degrees, half, against);
        Some(side.into_iter().chain([angle]).collect())
    }

    /// A number of degrees up to a right angle, perhaps behind the sum that gives it, and half of
    /// its last place.
    fn degrees(&self, words: &mut Words<'_>) -> Option<(f64, f64)> {
        let rest = &words.all[words.at..];
        let is_degree = |word: &str| word.ends_with('°');
        let last = rest.iter().take(8).position(|word| {
            is_degree(word) || self.is_in("statement.unit-degree", &word.to_lowercase())
        })?;
        let first = rest.first()?.chars().next()?;
        if !(first.is_ascii_digit() || first == '(') {
            return None;
        }
        let ends_alone = !is_degree(rest[last]) || rest[last] == "°";
        let at = last.checked_sub(usize::from(ends_alone))?;
        let digits = rest[at].trim_end_matches('°').replace(',', ".");
        let sum = rest[..=last].join(" ");
        words.at += last + 1;
        // A sum must come to what is told.
        if at > 0 && self.formula_comes_to(&sum).is_none() {
            return None;
        }
        let number = digits.parse::<f64>().ok()?;
        let decimals = digits.split_once('.').map_or(0, |(_, after)| after.len());
        let half = 0.5 * libm::pow(10.0, -(decimals as f64));
        (0.0..=90.0).contains(&number).then_some((number, half))
    }

    /// A sum of known angles that comes to its value.
    fn formula_comes_to(&self, sum: &str) -> Option<()> {
        let (head, _) = sum.rsplit_once('=')?;
        let plain = |c: char| c.is_ascii_digit() || " .,+-−°".contains(c);
        (head.chars().all(plain) && self.has_true_links(sum)).then_some(())
    }

    /// `FN = 20.7 J`, `ψ = 32.2 N`: a right number with the unit of another kind of quantity.
    pub(super) fn answer_of_another_kind(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        let (head, value) = line.rsplit_once('=')?;
        let value = value.trim().trim_end_matches('.');
        let end = value.find(|c: char| !(c.is_ascii_digit() || ".,".contains(c)))?;
        let (number, unit) = value.split_at(end);
        let unit = unit.trim();
        if number.is_empty() || head.contains('=') {
            return None;
        }
        let mut directions = self.key.steps.iter().filter(|step| step.id.is_direction());
        let only = directions.next().filter(|_| directions.next().is_none());
        let angle = only.filter(|step| {
            let usual = matches!(head.trim(), "ψ" | "psi");
            (usual || step.symbol.matches(head.trim())) && matches!(unit, "N" | "kN" | "m" | "kg")
        });
        let lines: Vec<String> = match angle {
            Some(step) => vec![format!("{} = {number}°", step.symbol.typed())],
            None if self.is_in("worded.kinds", &unit.to_lowercase()) && !self.is_readable(line) => {
                let units = ["N", "kN", "m", "°"].iter();
                units
                    .map(|unit| format!("{head}= {number} {unit}"))
                    .collect()
            }
            None => return None,
        };
        let right = lines.iter().any(|told| {
            let judged = self.beside_right_alone(|session| session.judged_anywhere(asked, told));
            let holds = matches!(judged.truth, Truth::Holds | Truth::HoldsRounded);
            holds && judged.names.is_none()
        });
        let slots = [("unit", Slot::Word(unit.to_owned()))];
        let (sign, verdict) = verdict_of("wrong-unit");
        right.then(|| {
            let message = self.words.say("worded.another-unit", &slots);
            Outcome::verdict(sign, verdict, "wrong-unit", message)
        })
    }

    /// Passes over the longest phrase of a list that stands next.
    fn passes(&self, words: &mut Words<'_>, key: &str) -> bool {
        let list = self.words.word(key);
        let known = list.split(',').map(str::trim);
        let longest = known.filter(|phrase| !phrase.is_empty() && words.starts(phrase));
        let count = longest
            .map(|phrase| phrase.split_whitespace().count())
            .max();
        words.at += count.unwrap_or(0);
        count.is_some()
    }
}

impl<'l> Words<'l> {
    fn of(text: &'l str) -> Words<'l> {
        Words {
            all: text.split_whitespace().collect(),
            at: 0,
        }
    }

    fn next(&self) -> Option<&'l str> {
        self.all.get(self.at).copied()
    }

    /// True if these words stand next, whatever their case; "pin's" is the pin.
    fn starts(&self, phrase: &str) -> bool {
        let mut next = self.all[self.at..].iter();
        phrase.split_whitespace().all(|word| {
            next.next().is_some_and(|one| {
                let small = one.to_lowercase();
                let bare = small.trim_end_matches("'s").trim_end_matches("’s");
                bare == word || small == word
            })
        })
    }
}

/// Every way that a sentence may be about: each force of the subject by itself and all of one
/// contact together, on the body told, else on any; what a body does to what holds it is the
/// reverse.
fn readings(forces: &[Exerted], of: &[usize], on: Option<&str>, back: bool) -> Vec<Way> {
    let sign = if back { -1.0 } else { 1.0 };
    let here = |one: &&OnBody| on.is_none_or(|body| one.body.to_lowercase() == body);
    let mut ways: Vec<Way> = Vec::new();
    let mut sums: Vec<(String, Way)> = Vec::new();
    for at in of {
        for one in forces[*at].on.iter().filter(here) {
            ways.extend(one.ways.iter().map(|(x, y)| (x * sign, y * sign)));
            let Some((x, y)) = one.ways.first() else {
                continue;
            };
            match sums.iter_mut().find(|(body, _)| *body == one.body) {
                Some((_, sum)) => *sum = (sum.0 + x * sign, sum.1 + y * sign),
                None => sums.push((one.body.clone(), (x * sign, y * sign))),
            }
        }
    }
    ways.extend(sums.into_iter().map(|(_, sum)| sum));
    ways
}
