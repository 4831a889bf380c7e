//! "495 N at 80° above the horizontal": a force told with the direction of its line.

use super::Session;
use super::acting::Way;
use super::measured::Reference;
use crate::judge::{Judgement, Remark, Truth};
use crate::key::{Part, StepId};
use crate::problem::Acting;
use crate::text::Words;
use crate::units::Dimension;

/// What may stand between a force and its angle.
const BEFORE: [&str; 3] = [", ", " ∠", "∠"];
/// How far an angle may be off that was worked out with three figures, in degrees.
const CARRIED: f64 = 0.15;

/// How far one may be off that is measured from a body or a rope: it is the difference of two.
const ROUNDED: f64 = 0.5;

/// The sine of an angle by which nothing leans.
const LEANS: f64 = 0.01;

/// A force and the angle behind it.
struct Told {
    /// The force, with the words that say which way it points.
    force: String,
    /// The words that say on which body it acts, where that is told.
    body: String,
    /// The angle as typed.
    typed: String,
    /// Its number.
    degrees: f64,
    /// Half of its last place.
    half: f64,
    /// What it is measured from, where that is said.
    from: Option<Reference>,
    /// A vector along the body or the rope that it is measured from, where that is said.
    line: Option<Way>,
}

impl Session {
    /// Judges a force that is told with the angle of its line; `None` for other lines.
    pub(super) fn judged_with_bearing(&self, asked: StepId, line: &str) -> Option<Judgement> {
        let told = self.force_and_angle(line)?;
        let mut judgement = self.judged(asked, &told.force);
        let target = judgement.target;
        let is_force = self.key.step(target)?.dimension == Dimension::FORCE;
        if !is_force || matches!(judgement.truth, Truth::NotUnderstood(_)) {
            return None;
        }
        if !judgement.truth.holds() {
            // What is given is told again with its own angle, or not at all.
            let noted = judgement.truth == Truth::Noted && !self.is_given(told.degrees);
            return (!noted).then_some(judgement);
        }
        if let Some(line) = told.line {
            let ways = self.ways_of(target);
            let mut ways = ways.iter().filter(|way| judgement.points_as_said(**way));
            ways.clone().next()?;
            if !ways.any(|way| lies_against(&told, *way, line)) {
                judgement.refuse_way();
            }
            return Some(judgement);
        }
        let lies_so = match self.direction_of(target) {
            Some(direction) => {
                let angle = match told.from {
                    Some(Reference::Vertical) => format!("90° - {}° {}", told.typed, told.body),
                    _ => format!("{}° {}", told.typed, told.body),
                };
                let direction = self.judged(direction, &angle);
                let holds = direction.truth.holds();
                if holds && self.leaves_way_open(asked, &told) {
                    return Some(which_way(judgement));
                }
                // What rests on her own values does so in either.
                if holds && matches!(direction.truth, Truth::Follows(_)) {
                    judgement.truth = direction.truth.clone();
                }
                if direction.truth == Truth::TooFewFigures {
                    return Some(direction);
                }
                if holds {
                    judgement.values.extend(direction.values);
                    judgement.establishes.extend(direction.establishes);
                }
                holds
            }
            None => self.points_at(&judgement, &told)?,
        };
        // The angle says what a way along an axis leaves open.
        (judgement.remarks).retain(|remark| !matches!(remark, Remark::OtherPart(_)));
        if !lies_so {
            judgement.refuse_way();
        }
        Some(judgement)
    }

    /// True for an angle alone that is the one with the horizontal, of a force that does not point
    /// up and to the right: it does not say which way.
    fn leaves_way_open(&self, asked: StepId, told: &Told) -> bool {
        let force = self.without_body(&told.force).map(|(force, _)| force);
        let said = self.way_behind(force.as_deref().unwrap_or(&told.force));
        let below = told.degrees < 0.0;
        if said.is_some() || told.from.is_some() || below || told.degrees > 90.0 {
            return false;
        }
        let is_level = told.degrees == 0.0;
        let is_upright = told.degrees == 90.0;
        let ways = ["solve.up", "solve.right"].map(|way| self.words.word(way));
        let ways = match (is_level, is_upright) {
            (true, _) => ways[1].clone(),
            (_, true) => ways[0].clone(),
            _ => ways.join(" "),
        };
        let from_axis = self.judged(asked, &format!("{} {ways}", told.force));
        !from_axis.truth.holds()
    }

    /// The step that is the direction of a force with two parts.
    fn direction_of(&self, size: StepId) -> Option<StepId> {
        if let StepId::Reaction(support, Part::Size) = size {
            let direction = StepId::Reaction(support, Part::Direction);
            return self.key.step(direction).map(|step| step.id);
        }
        let parts = &self.key.general.as_ref()?.parts;
        let of = parts.get(&size)?;
        let mut all = parts.iter();
        let found = all.find(|(id, parts)| id.is_direction() && *parts == of);
        found.map(|(id, _)| *id)
    }

    /// Whether a force of known line lies at this angle; `None` where its line is not known.
    fn points_at(&self, judgement: &Judgement, told: &Told) -> Option<bool> {
        let target = judgement.target;
        let Some(general) = &self.key.general else {
            return Some(lies_at(told, self.way_of_page(target)?));
        };
        let on = self.without_body(&told.force).map(|(_, noun)| noun);
        let any_of = |ways: &[(&String, (f64, f64))]| {
            let here = ways
                .iter()
                .filter(|(body, _)| on.as_ref().is_none_or(|on| on == *body));
            // The way and the angle are told of one end.
            let mut so = here.filter(|(_, way)| judgement.points_as_said(*way));
            so.any(|(_, way)| lies_at(told, *way))
        };
        if let Some(ends) = general.ends.get(&target) {
            let ends = ends.iter().map(|(body, pull)| (body, (pull.x, pull.y)));
            return Some(any_of(&ends.collect::<Vec<_>>()));
        }
        let way = general.ways.get(&target).map(|way| (way.x, way.y));
        let (x, y) = way.or_else(|| self.way_of_page(target))?;
        let (_, own) = judgement.values.iter().find(|(id, _)| *id == target)?;
        let sign = 1.0_f64.copysign(own.function[0]);
        let (x, y) = (sign * x, sign * y);
        Some(match general.between.get(&target) {
            Some([first, second]) => any_of(&[(first, (x, y)), (second, (-x, -y))]),
            None => lies_at(told, (x, y)),
        })
    }

    /// The unit vector of a weight, or of a force of known line of a problem with one body.
    fn way_of_page(&self, target: StepId) -> Option<(f64, f64)> {
        let force = match target {
            weight if weight.is_weight() => return Some((0.0, -1.0)),
            StepId::Pull(force) => self.problem.force(force)?,
            _ => return None,
        };
        let Acting::Along(direction) = force.acting else {
            return None;
        };
        let way = direction.unit(self.problem.body(), &self.problem.values());
        Some((way.x, way.y))
    }

    /// True for the size of an angle that the problem gives.
    fn is_given(&self, degrees: f64) -> bool {
        let givens = self.problem.givens().iter();
        let mut angles = givens.filter(|given| given.dimension == Dimension::ANGLE);
        angles.any(|given| (given.value.to_degrees() - degrees).abs() < 1e-6)
    }

    fn force_and_angle(&self, line: &str) -> Option<Told> {
        let words = Words::listed("reading.at").into_iter();
        let words: Vec<String> = words.map(|word| format!(" {word} ")).collect();
        let signs = BEFORE.iter().flat_map(|before| line.rmatch_indices(before));
        let told = words
            .iter()
            .flat_map(|before| line.rmatch_indices(before.as_str()));
        let mut places: Vec<(usize, &str)> = signs.chain(told).collect();
        places.sort_by_key(|(at, before)| std::cmp::Reverse((*at, before.len())));
        places
            .into_iter()
            .find_map(|(at, before)| self.parted(line[..at].trim_end(), &line[at + before.len()..]))
    }

    fn parted(&self, force: &str, behind: &str) -> Option<Told> {
        if !force.contains(|c: char| c.is_ascii_digit()) {
            return None;
        }
        // Which body it acts on is said with the force.
        let on = self.without_body(behind).map(|(rest, _)| rest);
        let (behind, body) = match &on {
            Some(rest) => (rest.trim_end(), said_body(behind, rest)),
            None => (behind, ""),
        };
        let measured = self.measured_from(behind);
        let line = self.measured_from_line(behind);
        let line = line.filter(|_| measured.is_none());
        let angle = measured.as_ref().map_or(behind, |measured| measured.angle);
        let angle = line.map_or(angle, |(angle, _)| angle);
        // With its line or a way behind it an angle needs no sign of degrees.
        let bare = measured.is_some()
            || line.is_some()
            || self.way_behind(behind).is_some()
            || self.before(behind, "statement.horizontal").is_some();
        let (typed, half, rest) = degrees(angle, bare)?;
        let typed = typed.replace('−', "-");
        let degrees = typed.parse::<f64>().ok()?;
        let ways = measured.as_ref().map_or("", |measured| &measured.ways);
        // What else is said tells the way, against the horizontal.
        let from = measured
            .as_ref()
            .map(|measured| measured.from)
            .or((!rest.is_empty()).then_some(Reference::Horizontal));
        let force = format!("{force} {rest}{ways} {body}").trim_end().to_owned();
        let without = self.without_body(&force);
        let body = without.map_or("", |(left, _)| said_body(&force, &left));
        Some(Told {
            body: body.to_owned(),
            force,
            typed,
            degrees,
            half,
            from,
            line: line.map(|(_, way)| way),
        })
    }

    /// `20° to the boom`, `20° from the wall`: the angle, and a vector along what it is measured from.
    fn measured_from_line<'l>(&self, text: &'l str) -> Option<(&'l str, Way)> {
        let text = text.trim_end().trim_end_matches('.');
        let mut lines = self.known_lines();
        let usual = [
            ("statement.upright-thing", (0.0, 1.0)),
            ("statement.level-thing", (1.0, 0.0)),
        ];
        // A wall that leans pushes at a slope.
        let pushes = self.exerted().into_iter().filter(|one| one.kind == "push");
        let pushes: Vec<_> = pushes.collect();
        let leans = |noun: &str, (x, y): Way| {
            let of_it = pushes.iter().filter(|one| one.noun == noun);
            let mut ways = of_it.flat_map(|one| one.on.iter().flat_map(|on| &on.ways));
            ways.any(|(u, v)| (x * u + y * v).abs() > LEANS * libm::hypot(*u, *v))
        };
        for (key, way) in usual {
            let nouns = self.words.word(key);
            let nouns = nouns.split(',').map(|noun| noun.trim().to_owned());
            let nouns = nouns.filter(|noun| !leans(noun, way));
            lines.extend(nouns.map(|noun| (noun, way)));
        }
        let (rest, way) = lines.into_iter().find_map(|(noun, way)| {
            let at = text.len().checked_sub(noun.len())?;
            let (rest, last) = (text.get(..at)?, text.get(at..)?);
            let stands = rest.ends_with(char::is_whitespace) && last.to_lowercase() == noun;
            stands.then_some((rest, way))
        })?;
        let rest = self.before(rest, "statement.filler").unwrap_or(rest);
        let from = ["statement.from", "statement.to", "statement.at"];
        let angle = from.iter().find_map(|key| self.before(rest, key))?;
        Some((angle, way))
    }
}

/// The judgement of a force whose angle does not say which way it points.
fn which_way(mut judgement: Judgement) -> Judgement {
    judgement.truth = Truth::Noted;
    judgement.proved = true;
    judgement.values.clear();
    judgement.establishes.clear();
    judgement.remarks = vec![Remark::WayOpen];
    judgement
}

/// Whether a force that points so lies at the angle that was told.
fn lies_at(told: &Told, (x, y): (f64, f64)) -> bool {
    let points = libm::atan2(y, x).to_degrees();
    let acute = {
        let line = points.rem_euclid(180.0);
        line.min(180.0 - line)
    };
    let near = |angle: f64| {
        let off = (told.degrees - angle).rem_euclid(360.0);
        off.min(360.0 - off) <= told.half + CARRIED
    };
    match told.from {
        Some(Reference::Vertical) => near(90.0 - acute),
        Some(Reference::Horizontal) => near(acute),
        Some(Reference::Right) => near(points),
        Some(Reference::Left) => near(180.0 - points),
        None => near(acute) || near(points),
    }
}

/// Whether a force that points so lies at the angle that was told with a line. What is further off
/// than figures that were rounded explain does not.
fn lies_against(told: &Told, (x, y): Way, (u, v): Way) -> bool {
    let between = libm::atan2(x * v - y * u, x * u + y * v).to_degrees().abs();
    let off = |angle: f64| (told.degrees.abs() - angle).abs();
    off(between).min(off(180.0 - between)) <= told.half + ROUNDED
}

/// The words of a body that stand in a text and not in what is left of it.
fn said_body<'t>(text: &'t str, left: &str) -> &'t str {
    let same = text
        .bytes()
        .zip(left.bytes())
        .take_while(|(one, other)| one == other);
    text.get(same.count()..).unwrap_or("").trim()
}

/// The digits of a number of degrees at the head of a text, half of its last place, and what comes after it.
fn degrees(text: &str, bare: bool) -> Option<(&str, f64, &str)> {
    let text = text.trim_start();
    // Counted clockwise from the x axis.
    let size = text.strip_prefix(['-', '−']).unwrap_or(text);
    let end = size.find(|c: char| !(c.is_ascii_digit() || c == '.'));
    let end = end.or(Some(size.len()).filter(|_| bare))?;
    let (digits, rest) = text.split_at(text.len() - size.len() + end);
    let rest = rest.trim_start();
    let degrees = Words::listed("reading.degrees");
    let spelled = || {
        degrees
            .iter()
            .find_map(|unit| rest.strip_prefix(unit.as_str()))
    };
    let signed = rest.strip_prefix('°').or_else(spelled);
    let rest = signed.or(Some(rest).filter(|_| bare))?;
    let decimals = digits.split_once('.').map_or(0, |(_, after)| after.len());
    let half = 0.5 * libm::pow(10.0, -(decimals as f64));
    let rest = rest.trim_start_matches([',', ' ']).trim_end();
    Some((digits, half, rest))
}
