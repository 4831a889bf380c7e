//! An answer to a step with a value: judged, diagnosed, spoken about.

use super::before::Question;
use super::speak::slip_told;
use super::state::Open;
use super::turn::{Progress, Sign, verdict_of};
use super::{Outcome, Session};
use crate::diagnosis::{Because, Diagnosis, Voice, diagnose_of};
use crate::judge::{
    Aside, Board, Judgement, Memo, Own, OwnName, Remark, Truth, by_part, judge, superseded,
};
use crate::key::StepId;
use crate::text::{Slot, Symbol};
use crate::units::{Dimension, value_text};

impl Session {
    /// Judges a line at a step and takes what it establishes.
    pub(super) fn answer(&mut self, asked: StepId, line: &str) -> Outcome {
        if self.is_question(line) {
            return Outcome::talk(self.words.say("talk.question", &[]).then(self.help(asked)));
        }
        // In a free working no balance is asked that names alone could be meant for.
        let in_words = self.is_free() && self.is_words(&line.replace('=', " "));
        if (asked.is_balance() || in_words) && self.is_the_idea(line) {
            let message = self.words.say("talk.words-only", &[]);
            return Outcome::noted(message);
        }
        let untitled = self.without_title(line);
        let line = untitled.as_deref().unwrap_or(line);
        let sized = self.size_with_way(line);
        let line = sized.as_deref().unwrap_or(line);
        if let Some(outcome) = self.answer_with_all_values(asked, line) {
            return outcome;
        }
        if let Some(outcome) = self.answer_inequality(asked, line) {
            return outcome;
        }
        let judgement = match self.is_free() {
            true => self.judged_freely(asked, line),
            false => self.judged_guided(asked, line),
        };
        let waiting = self.follows_waiting(asked, line, &judgement);
        if let Some(outcome) = waiting.filter(|_| !self.is_free()) {
            return outcome;
        }
        let friction = self.judged_as_friction(asked, line, &judgement);
        if friction.is_some() {
            self.keep_as_friction();
        }
        let judgement = friction.unwrap_or(judgement);
        let elsewhere = self.answer_at_another_value(asked, line, &judgement);
        let mut outcome = elsewhere.unwrap_or_else(|| self.answer_judged(asked, judgement));
        self.tell_other_value(&mut outcome);
        outcome
    }

    /// Judges a line, with the angle or the line that is told behind its force.
    pub(super) fn judged_told(&self, asked: StepId, line: &str) -> Judgement {
        let with_bearing = self.judged_with_bearing(asked, line);
        let told = with_bearing
            .or_else(|| self.judged_along(asked, line))
            .or_else(|| self.judged_up_or_down(asked, line));
        told.unwrap_or_else(|| self.judged(asked, line))
    }

    /// Judges a line, with the body that is said in it.
    pub(super) fn judged(&self, asked: StepId, line: &str) -> Judgement {
        let question = Question::of(self, asked, line);
        (self.before).or_judge(question, || self.judged_anew(asked, line))
    }

    pub(super) fn judged_anew(&self, asked: StepId, line: &str) -> Judgement {
        let (names, own_values) = (self.names(), self.own_values());
        let (line, nouns) = self.without_bodies(line);
        let line = line.as_str();
        let nouns: Vec<&str> = nouns.iter().map(String::as_str).collect();
        let mut board = self.board(&names, &own_values);
        board.on_body = nouns.first().copied();
        board.on_next = nouns.get(1..).unwrap_or_default();
        let number = self.state.next_number;
        let mut judgement = judge(&board, asked, line, number);
        let at = (asked, line, number);
        judgement.evidence.superseded = superseded(&board, at, &judgement);
        judgement.evidence.by_part = by_part(&board, (line, number), &judgement, None)
            .or_else(|| self.by_typed_part(&board, (line, number), &judgement));
        let value = line.rsplit_once('=').map(|(_, value)| value.trim_start());
        judgement.evidence.plus_told = value.is_some_and(|value| value.starts_with('+'));
        judgement
    }

    /// Answers a line that was judged.
    pub(super) fn answer_judged(&mut self, asked: StepId, mut judgement: Judgement) -> Outcome {
        let names = self.names();
        let own_values = self.own_values();
        let number = self.state.next_number;
        let board = self.board(&names, &own_values);
        let mut diagnosis = self.diagnosed(&board, &judgement);
        self.form_only(&mut diagnosis);
        self.forces_first(&judgement, &mut diagnosis);
        // A line that would follow shows no mistake.
        let follows = judgement.evidence.superseded.is_some();
        let evidence = &judgement.evidence;
        let wrong_number = evidence.wrong_angle.is_some() || evidence.misread_number.is_some();
        if follows
            || wrong_number && !diagnosis.is_by_form()
            || judgement.evidence.two_meanings.is_some() && !judgement.target.is_component()
        {
            diagnosis = Diagnosis::default();
        }
        if judgement.truth == Truth::DoesNotHold
            && judgement.evidence.rounded_hard
            && !judgement.evidence.broken_link
            && (self.is_general() || !diagnosis.is_by_form())
        {
            judgement.truth = Truth::TooFewFigures;
            diagnosis = Diagnosis::default();
        }
        let said_again = judgement.evidence.says_again;
        if said_again.is_some() {
            diagnosis = Diagnosis::default();
        } else if let Some(follows) = self.wrong_force_again(&judgement, &diagnosis) {
            judgement = follows;
            diagnosis = Diagnosis::default();
        }
        // A name of her own is judged when it is used, unless its form is a known mistake.
        let flat = judgement.evidence.takes_ten || diagnosis.is_by_form();
        if judgement.names.is_some() && judgement.truth == Truth::DoesNotHold && !flat {
            judgement.truth = Truth::Noted;
            judgement.value = None;
        }
        // A true relation beside the question is no attempt at it.
        if judgement.evidence.aside == Some(Aside::True) && !flat {
            judgement.truth = Truth::Noted;
            judgement.proved = true;
        }
        let known = self.knows_as_multiple(&judgement);
        for (name, own) in judgement.names_before.iter().chain(&judgement.names) {
            let symbol = Symbol::new(name.clone());
            self.state.own_names.retain(|(known, _)| *known != symbol);
            self.state.own_names.push((symbol, own.clone()));
        }
        self.keep_as_limit(&judgement);
        let rests_on_open = self.is_only_in_names(&judgement);
        let unknown_name = self.is_free() && !known && self.is_unknown_name(&judgement);
        let turned = self.sense_kept(&judgement);
        let told = judgement.truth.holds() && !rests_on_open;
        let circle = told && self.goes_in_circle(judgement.target, &judgement);
        let mut outcome = if let Some(turned) = turned {
            turned
        } else if let Some(line) = said_again {
            self.says_refused(line)
        } else if unknown_name {
            self.asks_whose_name(&judgement)
        } else if circle {
            Outcome::noted(self.words.say("general.said-already-freely", &[]))
        } else if judgement.truth.holds() && rests_on_open {
            let message = self.still_asked();
            Outcome::noted(message)
        } else if let Some(lack) = self.lack(&judgement).filter(|_| told) {
            self.waits_for(asked, (&judgement, number), lack)
        } else if judgement.truth.holds() {
            self.holds(asked, &judgement)
        } else if let Some(other) = self.noted_other(asked, &judgement) {
            self.note_other(asked, other, &judgement)
        } else {
            self.does_not_hold(asked, &judgement, &diagnosis, number)
        };
        outcome.reading = self.reading_shown(&judgement);
        if self.is_free() {
            let named = diagnosis.spoken().is_some();
            outcome = self.counted_freely(outcome, &judgement, named);
        }
        // What waits for her may be looked at under another name.
        let left = self.state.open.clone().filter(|open| open.number == number);
        match &left {
            Some(open) => self.keep_basis(&open.judgement, &open.diagnosis, &outcome),
            None => self.keep_basis(&judgement, &diagnosis, &outcome),
        }
        // Nothing is marked in what is only noted.
        let marked = outcome.sign != Sign::Right && judgement.truth != Truth::Noted;
        outcome.caret = judgement.caret.filter(|_| marked);
        outcome
    }

    /// The thoughts behind a refused line. Of a step told anew, her right value before says nothing; nor
    /// does what she had wrong there, where nothing else is found.
    fn diagnosed(&self, board: &Board<'_>, judgement: &Judgement) -> Diagnosis {
        let diagnose = |drops: &dyn Fn(bool) -> bool| {
            let target = judgement.target;
            let mut standing = board.standing.clone();
            let dropped = |own: &Own| drops(own.right);
            if standing.get(&target).is_some_and(dropped) {
                standing.remove(&target);
            }
            // A balance is one for what it gives: a value of that before, right or wrong, says nothing.
            if let Some(given) = self.key.gives(target).filter(|_| target.is_balance()) {
                standing.remove(&given);
            }
            let mut carried = board.carried.to_vec();
            carried.retain(|(step, _)| !drops(false) || *step != target);
            let board = Board {
                standing: &standing,
                carried: &carried,
                memo: Memo::default(),
                ..*board
            };
            diagnose_of(&board, judgement, &self.instances, &self.state.leaning)
        };
        let refused = judgement.truth == Truth::DoesNotHold;
        let diagnosis = diagnose(&|right| refused && right);
        let hers = board
            .standing
            .get(&judgement.target)
            .is_some_and(|own| !own.right)
            || board
                .carried
                .iter()
                .any(|(step, _)| *step == judgement.target);
        match diagnosis.spoken().is_none() && refused && hers {
            true => diagnose(&|_| true),
            false => diagnosis,
        }
    }

    /// `Weight of the mast = 412 N` with the symbol of the step for its title.
    fn without_title(&self, line: &str) -> Option<String> {
        let start = line.len() - line.trim_start().len();
        let word = self.words.word("own.friction");
        let word = word.split(',').next().unwrap_or_default().to_owned();
        let friction = self.only_friction().map(|id| (id, word));
        let titles = self.key.asked().map(|step| (step.id, self.title(step.id)));
        // Of the words before the sign, or before `is`, the article is none.
        let (head, rest) = self.head_in_words(line)?;
        let bare = |words: &str| {
            let words = words.to_lowercase();
            let kept = words.split_whitespace();
            let kept = kept.filter(|word| !self.is_in("own.article", word));
            kept.collect::<Vec<&str>>().join(" ")
        };
        let said = bare(head);
        let with_symbol = |id: StepId, rest: &str| {
            let symbol = self.key.step(id)?.symbol.typed();
            // Blanks keep the places of what comes after.
            let blanks = line.len() - start - rest.len();
            let blanks = blanks.checked_sub(symbol.len())?;
            Some(format!(
                "{}{symbol}{}{rest}",
                " ".repeat(start),
                " ".repeat(blanks)
            ))
        };
        let titled = titles
            .chain(friction)
            .find_map(|(id, title)| (said == bare(&title)).then(|| with_symbol(id, &rest))?);
        titled.or_else(|| {
            // `weight of the dummy: 32*9.8 = 314 N`: words before numbers say what they come to.
            let numbers = rest.strip_prefix(':').filter(|_| self.is_free())?;
            let readings = crate::reading::read(numbers, self.names().vocabulary()).ok()?;
            let mut sides = readings.first()?.sides.iter();
            let nameless = sides.all(|side| side.names().is_empty());
            let step = self.step_said(head).filter(|_| nameless)?;
            with_symbol(step, &format!("={numbers}"))
        })
    }

    /// The words before the sign of a line, and the line from the sign on; `is` is one.
    fn head_in_words<'l>(&self, line: &'l str) -> Option<(&'l str, String)> {
        let sign = line.find(['=', ':']);
        let words = sign.map_or(line, |sign| &line[..sign]);
        let verbs = self.words.word("own.is");
        let mut verbs = verbs.split(',').map(str::trim);
        let at = verbs.find_map(|verb| Some((words.find(&format!(" {verb} "))? + 1, verb.len())));
        match (at, sign) {
            (Some((at, length)), None) => {
                let rest = &line[at + length..];
                let blanks = " ".repeat(length - 1);
                Some((&line[..at], format!("={blanks}{rest}")))
            }
            (_, Some(sign)) => Some((&line[..sign], line[sign..].to_owned())),
            (None, None) => None,
        }
    }

    /// "What is g": a question in words, where a value is asked.
    fn is_question(&self, line: &str) -> bool {
        let small = line.trim().to_lowercase();
        let first = small.split_whitespace().next().unwrap_or_default();
        let asks = self.words.word("statement.question");
        let known = asks.split(',').any(|word| word.trim() == first);
        known
            && small.split_whitespace().count() > 1
            && !small.contains(['=', '*', '(', '+'])
            && !small.chars().any(|c| c.is_ascii_digit())
    }

    /// "clockwise moments = anticlockwise moments": the principle, in words alone.
    fn is_the_idea(&self, line: &str) -> bool {
        let small = line.to_lowercase();
        let words = self.words.word("statement.turning");
        let turning = words
            .split(',')
            .filter(|word| small.contains(word.trim()))
            .count();
        let no_digit = |text: &str| !text.chars().any(|c| c.is_ascii_digit());
        // `ΣM = 0`: a sum of which nothing is said.
        let sum = small.trim_start().starts_with(['Σ', 'σ', '∑']);
        let zero = small.trim_end().strip_suffix('0').filter(|_| sum);
        let bare = |before: &str| before.trim_end().ends_with('=') && !before.contains('+');
        turning > 0 && no_digit(line) || zero.is_some_and(|before| bare(before) && no_digit(before))
    }

    /// A calculation where words are asked: what it settles is kept, and the question stays.
    pub(super) fn ahead(&mut self, line: &str) -> Outcome {
        let Some(first) = self.key.asked().map(|step| step.id).find(|id| {
            !matches!(id, StepId::Forces | StepId::Pivot) && !self.state.reached.contains_key(id)
        }) else {
            return Outcome::talk(self.words.say("talk.empty", &[]));
        };
        let names = self.names();
        let own_values = self.own_values();
        let judgement = judge(
            &self.board(&names, &own_values),
            first,
            line,
            self.state.next_number,
        );
        let asked = self.asked().unwrap_or(first);
        // A number alone may agree with anything: it settles nothing before it is asked.
        let alone = !line.contains(['=', '*', '·', '×', '/', '+', '(']);
        let open = judgement.remarks.contains(&Remark::RestsOnOpen);
        if judgement.truth.holds() && judgement.proved && !open && !alone {
            let mut outcome = self.holds(asked, &judgement);
            outcome.reading = self.reading_shown(&judgement);
            return outcome;
        }
        let key = match asked {
            StepId::Pivot => "talk.first-pivot",
            _ => "talk.first-forces",
        };
        Outcome::noted(self.words.say(key, &[]))
    }

    /// A line that holds.
    fn holds(&mut self, asked: StepId, judgement: &Judgement) -> Outcome {
        self.confirm_mended(judgement);
        let waiting = self.line_of_probe(judgement);
        for (step, own) in &judgement.values {
            self.state.put(*step, own.clone());
            self.state.gone_on.remove(step);
        }
        // A balance mended takes the place of one gone on with.
        if judgement.target.is_balance()
            && matches!(judgement.truth, Truth::Holds | Truth::HoldsRounded)
        {
            self.state.carried.clear();
        }
        // And so does a component of the unknown.
        if judgement.truth == Truth::Holds {
            let mended = judgement.target;
            self.state.carried.retain(|(step, _)| *step != mended);
        }
        let settled: Vec<StepId> = judgement.establishes.clone();
        for step in &settled {
            self.reach(*step, Progress::Done);
        }
        let truth = match &judgement.truth {
            Truth::HoldsRounded => "rounded",
            Truth::Follows(_) => "follows",
            _ => "holds",
        };
        let (sign, verdict) = verdict_of(truth);
        self.mark_unit(judgement);
        let message = self.words_of_right(asked, judgement);
        let mut outcome = Outcome::verdict(sign, verdict, truth, message);
        outcome.progress = settled;
        if let Some(told) = waiting.and_then(|waiting| self.told_after_probe(waiting)) {
            outcome.message = outcome.message.then(told);
        }
        outcome
    }

    /// Another step that a line settles though it was not asked.
    fn noted_other(&self, asked: StepId, judgement: &Judgement) -> Option<StepId> {
        let other = judgement.evidence.other_step?;
        (judgement.truth == Truth::DoesNotHold && other != asked && !judgement.evidence.broken_link)
            .then_some(other)
    }

    /// A true value of another step: noted, and the question stays.
    fn note_other(&mut self, asked: StepId, other: StepId, judgement: &Judgement) -> Outcome {
        let slots = [
            ("other", Slot::Word(self.title(other))),
            (
                "symbol",
                Slot::Name(
                    self.key
                        .step(other)
                        .map_or_else(String::new, |step| step.symbol.shown()),
                ),
            ),
            ("step", Slot::Word(self.title(asked))),
        ];
        if self.is_free() {
            return Outcome::noted(self.words.say("talk.other-step-freely", &slots));
        }
        let mut outcome = Outcome::noted(self.words.say("talk.other-step", &slots));
        // A weight given where its component is asked is a thought of its own: name it too.
        let names = self.names();
        let own = self.own_values();
        let board = self.board(&names, &own);
        let mut diagnosis = diagnose_of(&board, judgement, &self.instances, &self.state.leaning);
        self.form_only(&mut diagnosis);
        // One moment is a part of the sum, whatever its number may come from.
        let part = asked == StepId::MomentSum && matches!(other, StepId::Moment(_));
        // The unknown worked out once more is that, and puts it into no balance.
        let told = judgement.evidence.alone || judgement.evidence.names_only;
        let again = other.is_unknown() && !told;
        // So is a part of the pull that she has told as such.
        let part_told = matches!(other, StepId::PartOf(..))
            && (judgement.evidence.alone || judgement.evidence.names_only)
            && self.state.standing.contains_key(&other);
        // A form that is a part of the pull is that, unless it proves a mistake.
        let part_shown = matches!(other, StepId::PartOf(..)) && !told;
        let spoken = diagnosis.spoken().filter(|named| {
            let proved = !part_shown || named.because == Because::Form;
            !again && !part_told && proved
        });
        if spoken.is_some_and(|named| !part || named.voice == Voice::Flat) {
            outcome = self.does_not_hold(asked, judgement, &diagnosis, self.state.next_number);
        }
        outcome
    }

    /// A line that does not hold.
    fn does_not_hold(
        &mut self,
        asked: StepId,
        judgement: &Judgement,
        diagnosis: &Diagnosis,
        number: usize,
    ) -> Outcome {
        let truth = match &judgement.truth {
            Truth::Noted | Truth::OtherAngle => "noted",
            Truth::Circular => "circular",
            Truth::TooFewFigures => "too-few-figures",
            Truth::WrongUnit { .. } => "wrong-unit",
            Truth::NotUnderstood(_) => "not-understood",
            Truth::Mismatched(_) => "mismatched",
            _ => "wrong",
        };
        let (sign, verdict) = match judgement.evidence.aside {
            Some(Aside::True) if truth == "wrong" => (Sign::Wrong, "verdict.beside"),
            _ => verdict_of(truth),
        };
        let sight = self.sight(asked, judgement, diagnosis);
        let slip = match sight {
            Some(sight) => Some(sight.slip()),
            None => slip_told(judgement, diagnosis),
        };
        let slip = slip.map(|slip| (slip, Voice::Flat));
        let named = slip.or_else(|| {
            let spoken = diagnosis.spoken()?;
            Some((self.instances[spoken.instance].mistake.id, spoken.voice))
        });
        let message = match sight {
            Some(sight) => self.sight_told(sight, judgement.target).then(self.offer()),
            None => match diagnosis.of_part {
                Some(part) => {
                    let mut of_part = judgement.clone();
                    of_part.target = part;
                    self.words_of_wrong(asked, &of_part, diagnosis)
                }
                None => self.words_of_wrong(asked, judgement, diagnosis),
            },
        };
        let message = match self.probe_asked(judgement, diagnosis) {
            Some(question) => message.then(question),
            None => message,
        };
        let mut outcome = Outcome::verdict(sign, verdict, truth, message);
        outcome.mistakes = diagnosis
            .named
            .iter()
            .map(|named| self.instances[named.instance].mistake.id)
            .collect();
        if matches!(sign, Sign::Wrong | Sign::Incomplete) || judgement.truth == Truth::OtherAngle {
            self.leave_open(asked, judgement, diagnosis, number, named);
        }
        outcome
    }

    /// A line that does not hold waits for what the learner does about it.
    fn leave_open(
        &mut self,
        asked: StepId,
        judgement: &Judgement,
        diagnosis: &Diagnosis,
        number: usize,
        named: Option<(&'static str, Voice)>,
    ) {
        // Charged is the step that the line names, where that is asked some time.
        let meant = judgement.target;
        let is_asked = self.key.asked().any(|step| step.id == meant);
        let charged = match is_asked && self.names_target(judgement) {
            true => meant,
            false => asked,
        };
        self.miss_told(charged, named);
        self.state.open = Some(Open {
            judgement: judgement.clone(),
            diagnosis: diagnosis.clone(),
            number,
        });
        self.state.hint_stage = 0;
    }

    /// How the line was read, with its value where it has a form.
    pub(super) fn reading_shown(&self, judgement: &Judgement) -> Option<String> {
        let layout = judgement.layout.clone()?;
        if let Some((_, own)) = &judgement.names {
            return Some(self.own_name_shown(layout, own));
        }
        let of = judgement.evidence.other_step.unwrap_or(judgement.target);
        let kind = |id| self.key.step(id).map(|step| step.dimension);
        // An angle was calculated as one: of a force it tells nothing.
        let angle = kind(judgement.target) == Some(Dimension::ANGLE);
        if angle && kind(of) != Some(Dimension::ANGLE) {
            return Some(layout);
        }
        let dimension = self
            .key
            .step(of)
            .map_or(Dimension::NUMBER, |step| step.dimension);
        match judgement.value {
            // A form that gives no angle shows none.
            Some(_) if dimension == Dimension::ANGLE && !judgement.truth.holds() => Some(layout),
            Some(value)
                if shows_no_value(&layout)
                    && !judgement.target.is_balance()
                    && judgement.evidence.dimension.is_none()
                    && !self.would_tell_unfound(judgement)
                    && value.is_finite() =>
            {
                Some(format!(
                    "{layout} = {}",
                    value_text(value, dimension, self.problem.figures())
                ))
            }
            _ => Some(layout),
        }
    }

    /// How a definition of a name of her own was read: with the value that the name keeps.
    fn own_name_shown(&self, layout: String, own: &OwnName) -> String {
        if !shows_no_value(&layout) || !self.may_tell(own) || !own.value.is_finite() {
            return layout;
        }
        let value = value_text(own.value, own.dimension, self.problem.figures());
        format!("{layout} = {value}")
    }
}

/// True for a form that does not end with its value.
fn shows_no_value(layout: &str) -> bool {
    let last = layout.rsplit(" = ").next().unwrap_or_default();
    let told = layout.contains(" = ")
        && last
            .chars()
            .next()
            .is_some_and(|c| c.is_ascii_digit() || c == '−')
        && !last.contains(['·', '/', '+', '(', '√']);
    !told
        && (layout.contains(['·', '/', '(', '+', '√'])
            || layout.contains(" − ")
            || layout.contains("sin")
            || layout.contains("cos"))
}
