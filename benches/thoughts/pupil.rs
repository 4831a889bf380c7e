//! Pupils who work with their own arithmetic, rightly or with the commonest mistakes.
//!
//! Nothing here is taken from the rewrites of the catalogue: each mistake is what somebody does with
//! a pencil, and its numbers follow from that.

use super::paper::Paper;
use leverwright::key::{Axis, Part, StepId};
use leverwright::problem::ForceId;
use leverwright::units::{figures_text, number_text};

/// Whose ratio is wrong: a weight's, all weights', the rope's, or all.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Whose {
    Weight(usize),
    Weights,
    Rope,
    All,
}

/// One of the twenty commonest mistakes, made somewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Wrong {
    SineCosine(Whose),
    Complement(Whose),
    NotResolved(Whose),
    Hypotenuse(Whose),
    GivenAngle,
    Mass(usize),
    AllMasses,
    OwnLeftOut,
    OwnAtTip,
    LoadForgotten(usize),
    TermLeftOut(usize),
    Turned(usize),
    FarEnd(usize),
    RopeAtTip,
    NoDistances,
    Stopped,
    Multiplied,
    NotDivided,
    Radians,
    UpwardForgotten,
    WholeSideways,
}

impl Wrong {
    /// The catalogue's name of it.
    pub(super) fn id(self) -> &'static str {
        match self {
            Wrong::SineCosine(_) => "sine-cosine-exchanged",
            Wrong::Complement(_) => "complement",
            Wrong::NotResolved(_) => "not-resolved",
            Wrong::Hypotenuse(_) => "hypotenuse-confused",
            Wrong::GivenAngle => "given-angle-as-is",
            Wrong::Mass(_) | Wrong::AllMasses => "mass-for-weight",
            Wrong::OwnLeftOut => "own-weight-left-out",
            Wrong::OwnAtTip => "own-weight-at-tip",
            Wrong::LoadForgotten(_) => "force-forgotten",
            Wrong::TermLeftOut(_) => "term-left-out",
            Wrong::Turned(_) => "turns-the-wrong-way",
            Wrong::FarEnd(_) => "from-the-far-end",
            Wrong::RopeAtTip => "rope-at-tip",
            Wrong::NoDistances => "forces-for-moments",
            Wrong::Stopped => "stopped-at-component",
            Wrong::Multiplied => "multiplied-at-the-end",
            Wrong::NotDivided => "arm-not-divided-out",
            Wrong::Radians => "radian-calculator",
            Wrong::UpwardForgotten => "rope-pull-forgotten-upward",
            Wrong::WholeSideways => "whole-tension-sideways",
        }
    }

    /// How often these pupils make it, beside one another. Fixed here, and not the priors of the
    /// diagnosis: the first is met less often and the last more often than those say.
    pub(super) fn weight(self) -> f64 {
        match self {
            Wrong::SineCosine(Whose::All) => 4.0,
            Wrong::SineCosine(_) => 2.0,
            Wrong::Complement(_) => 3.0,
            Wrong::NotResolved(_) => 3.0,
            Wrong::Hypotenuse(_) => 1.0,
            Wrong::GivenAngle => 6.0,
            Wrong::Mass(_) => 2.0,
            Wrong::AllMasses => 6.0,
            Wrong::OwnLeftOut => 5.0,
            Wrong::OwnAtTip => 5.0,
            Wrong::LoadForgotten(_) => 2.0,
            Wrong::TermLeftOut(_) => 2.0,
            Wrong::Turned(_) => 1.5,
            Wrong::FarEnd(_) => 3.0,
            Wrong::RopeAtTip => 2.0,
            Wrong::NoDistances => 4.0,
            Wrong::Stopped => 5.0,
            Wrong::Multiplied => 5.0,
            Wrong::NotDivided => 3.0,
            Wrong::Radians => 3.0,
            Wrong::UpwardForgotten => 5.0,
            Wrong::WholeSideways => 4.0,
        }
    }

    /// Every one that can be tried on a problem.
    pub(super) fn all(paper: &Paper) -> Vec<Wrong> {
        let mut all = vec![
            Wrong::GivenAngle,
            Wrong::AllMasses,
            Wrong::OwnLeftOut,
            Wrong::OwnAtTip,
            Wrong::RopeAtTip,
            Wrong::NoDistances,
            Wrong::Stopped,
            Wrong::Multiplied,
            Wrong::NotDivided,
            Wrong::Radians,
            Wrong::UpwardForgotten,
            Wrong::WholeSideways,
        ];
        let weights = 0..paper.weights.len();
        let mut whose: Vec<Whose> = weights.clone().map(Whose::Weight).collect();
        whose.extend([Whose::Weights, Whose::Rope, Whose::All]);
        for who in whose {
            all.push(Wrong::SineCosine(who));
            all.push(Wrong::NotResolved(who));
            all.push(Wrong::Hypotenuse(who));
        }
        all.extend([Whose::Weights, Whose::Rope].map(Wrong::Complement));
        // Where the printed angle is that with the other line, taking it over is taking the other
        // angle; a load at the far end has no distance from there.
        let other = 90.0 - paper.rope.with_body;
        if paper
            .rope
            .printed
            .is_some_and(|printed| (printed - other).abs() < 1e-6)
        {
            all.retain(|wrong| *wrong != Wrong::GivenAngle);
        }
        for index in weights {
            all.extend([
                Wrong::Mass(index),
                Wrong::TermLeftOut(index),
                Wrong::Turned(index),
            ]);
            if index > 0 {
                all.push(Wrong::LoadForgotten(index));
                let is_at_tip = (paper.weights[index].at - paper.length).abs() < 1e-9;
                all.extend((!is_at_tip).then_some(Wrong::FarEnd(index)));
            }
        }
        all
    }
}

/// A line of her working.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Line {
    pub(super) step: StepId,
    /// What she writes: a form, or an equation.
    pub(super) form: String,
    /// What she gets, in newtons or degrees; `None` for an equation and what has the pull in it.
    pub(super) value: Option<f64>,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Ratio {
    Sine,
    Cosine,
    One,
    OverSine,
}

/// A pupil at work: what she takes each thing for.
struct Pupil<'a> {
    paper: &'a Paper,
    wrongs: &'a [Wrong],
    figures: u8,
}

/// The working of a pupil who does these things wrongly and carries so many figures on; `None` where
/// nothing comes of it.
pub(super) fn work(paper: &Paper, wrongs: &[Wrong], figures: u8) -> Option<Vec<Line>> {
    let pupil = Pupil {
        paper,
        wrongs,
        figures,
    };
    let lines = pupil.lines();
    let finite = |line: &Line| line.value.is_none_or(f64::is_finite);
    lines.iter().all(finite).then_some(lines)
}

/// The place of the first line in which two workings differ.
pub(super) fn first_apart(one: &[Line], other: &[Line]) -> Option<StepId> {
    let differs = |line: &&Line| {
        let same = one.iter().find(|mine| mine.step == line.step);
        same.is_none_or(|same| same.form != line.form || !near(same.value, line.value))
    };
    other.iter().find(differs).map(|line| line.step)
}

fn near(one: Option<f64>, other: Option<f64>) -> bool {
    match (one, other) {
        (Some(one), Some(other)) => (one - other).abs() <= 1e-9 * one.abs().max(1.0),
        (None, None) => true,
        _ => false,
    }
}

impl Pupil<'_> {
    fn does(&self, wrong: Wrong) -> bool {
        self.wrongs.contains(&wrong)
    }

    /// The ratio of a weight, or of the rope.
    fn ratio(&self, weight: Option<usize>) -> (Ratio, f64) {
        let made = |make: fn(Whose) -> Wrong| {
            match weight {
                Some(index) => [Whose::Weight(index), Whose::Weights, Whose::All],
                None => [Whose::Rope, Whose::Rope, Whose::All],
            }
            .into_iter()
            .any(|whose| self.does(make(whose)))
        };
        let angle = match weight {
            Some(_) => self.paper.weight_angle,
            None => self.paper.rope.with_body,
        };
        // What acts squarely has no ratio to be wrong about.
        if angle == 90.0 {
            return (Ratio::One, angle);
        }
        let angle = match self.paper.rope.printed {
            _ if made(Wrong::Complement) => 90.0 - angle,
            Some(printed) if weight.is_none() && self.does(Wrong::GivenAngle) => printed,
            _ => angle,
        };
        let ratio = match () {
            () if made(Wrong::SineCosine) => Ratio::Cosine,
            () if made(Wrong::NotResolved) => Ratio::One,
            () if made(Wrong::Hypotenuse) => Ratio::OverSine,
            () => Ratio::Sine,
        };
        (ratio, angle)
    }

    /// A ratio's value, and how it is typed behind a force.
    fn taken(&self, (ratio, angle): (Ratio, f64)) -> (f64, String) {
        let turned = match self.does(Wrong::Radians) {
            true => angle,
            false => angle.to_radians(),
        };
        let text = number_text(angle);
        match ratio {
            Ratio::Sine => (turned.sin(), format!("*sin({text})")),
            Ratio::Cosine => (turned.cos(), format!("*cos({text})")),
            Ratio::One => (1.0, String::new()),
            Ratio::OverSine => (1.0 / turned.sin(), format!("/sin({text})")),
        }
    }

    /// A value as she carries it on.
    fn carried(&self, value: f64) -> f64 {
        figures_text(value, self.figures).parse().unwrap_or(value)
    }

    fn shown(&self, value: f64) -> String {
        figures_text(value, self.figures)
    }

    fn distance(&self, index: usize) -> f64 {
        let weight = &self.paper.weights[index];
        match index {
            0 if self.does(Wrong::OwnAtTip) => self.paper.length,
            _ if self.does(Wrong::FarEnd(index)) => self.paper.length - weight.at,
            _ => weight.at,
        }
    }

    fn rope_at(&self) -> f64 {
        match self.does(Wrong::RopeAtTip) {
            true => self.paper.length,
            false => self.paper.rope.at,
        }
    }

    fn forgets(&self, index: usize) -> bool {
        match index {
            0 => self.does(Wrong::OwnLeftOut),
            _ => self.does(Wrong::LoadForgotten(index)),
        }
    }

    fn lines(&self) -> Vec<Line> {
        let paper = self.paper;
        let mut lines = Vec::new();
        let mut put = |step: StepId, form: String, value: Option<f64>| {
            if paper.name(step).is_some() {
                lines.push(Line { step, form, value });
            }
        };
        let mut sizes = Vec::new();
        for (index, weight) in paper.weights.iter().enumerate() {
            let as_mass = self.does(Wrong::Mass(index)) || self.does(Wrong::AllMasses);
            let mass = number_text(weight.mass);
            let (form, value) = match as_mass {
                true => (mass, weight.mass),
                false => (format!("{mass}*{}", paper.g), weight.mass * paper.g),
            };
            sizes.push(self.carried(value));
            if !self.forgets(index) {
                put(StepId::Weight(weight.force), form, Some(value));
            }
        }
        for (index, weight) in paper.weights.iter().enumerate() {
            let (ratio, text) = self.taken(self.ratio(Some(index)));
            if paper.leans() && !self.forgets(index) {
                let form = format!("{}{text}", self.shown(sizes[index]));
                let value = sizes[index] * ratio;
                put(StepId::Across(weight.force), form, Some(value));
            }
        }
        let (rope_ratio, rope_text) = self.taken(self.ratio(None));
        if paper.rope.with_body < 90.0 {
            put(
                StepId::Across(paper.rope.force),
                format!("T{rope_text}"),
                None,
            );
        }
        let (known, sum) = self.known(&sizes);
        let (arm, arm_text) = match self.does(Wrong::NoDistances) {
            true => (1.0, String::new()),
            false => (self.rope_at(), format!("*{}", number_text(self.rope_at()))),
        };
        put(
            StepId::MomentSum,
            format!("{known} = T{rope_text}{arm_text}"),
            None,
        );
        let (form, pull) = self.pull((&known, sum), (arm, &arm_text), (rope_ratio, &rope_text));
        put(StepId::Pull(paper.rope.force), form, Some(pull));
        self.hinge(&sizes, self.carried(pull), &mut put);
        lines
    }

    /// The known moments, typed and worked out.
    fn known(&self, sizes: &[f64]) -> (String, f64) {
        let (mut text, mut sum) = (String::new(), 0.0);
        for (index, size) in sizes.iter().enumerate() {
            if self.forgets(index) || self.does(Wrong::TermLeftOut(index)) {
                continue;
            }
            let (ratio, ratio_text) = self.taken(self.ratio(Some(index)));
            let (arm, arm_text) = match self.does(Wrong::NoDistances) {
                true => (1.0, String::new()),
                false => {
                    let arm = self.distance(index);
                    (arm, format!("*{}", number_text(arm)))
                }
            };
            let sign = match self.does(Wrong::Turned(index)) {
                true => -1.0,
                false => 1.0,
            };
            text.push_str(match (text.is_empty(), sign < 0.0) {
                (true, false) => "",
                (true, true) => "-",
                (false, false) => " + ",
                (false, true) => " - ",
            });
            text.push_str(&format!("{}{ratio_text}{arm_text}", self.shown(*size)));
            sum += sign * size * ratio * arm;
        }
        (text, sum)
    }

    /// The last step of the pull.
    fn pull(
        &self,
        (known, sum): (&str, f64),
        (arm, arm_text): (f64, &str),
        (ratio, ratio_text): (f64, &str),
    ) -> (String, f64) {
        let under = |parts: &[&str]| {
            let whole: Vec<String> = parts
                .iter()
                .filter(|part| !part.is_empty())
                .map(|part| match part.strip_prefix('/') {
                    Some(over) => format!("1/{over}"),
                    None => part.trim_start_matches('*').to_owned(),
                })
                .collect();
            match whole.is_empty() {
                true => format!("({known})"),
                false => format!("({known})/({})", whole.join("*")),
            }
        };
        match () {
            () if self.does(Wrong::Stopped) => (under(&[arm_text]), sum / arm),
            () if self.does(Wrong::Multiplied) => (
                format!("{}{ratio_text}", under(&[arm_text])),
                sum / arm * ratio,
            ),
            () if self.does(Wrong::NotDivided) => (under(&[ratio_text]), sum / ratio),
            () => (under(&[arm_text, ratio_text]), sum / arm / ratio),
        }
    }

    fn hinge(&self, sizes: &[f64], pull: f64, put: &mut impl FnMut(StepId, String, Option<f64>)) {
        let paper = self.paper;
        let part = |part: Part| StepId::Reaction(ForceId::Support(0), part);
        let (slope, tension) = (paper.rope.slope, self.shown(pull));
        let angle = number_text(slope);
        let turned = match self.does(Wrong::Radians) {
            true => slope,
            false => slope.to_radians(),
        };
        let (level, level_text) = match slope {
            90.0 => (0.0, String::new()),
            0.0 => (pull, tension.clone()),
            _ if self.does(Wrong::WholeSideways) => (pull, tension.clone()),
            _ => (pull * turned.cos(), format!("{tension}*cos({angle})")),
        };
        let (upright, upright_text) = match slope {
            0.0 => (0.0, String::new()),
            _ if self.does(Wrong::UpwardForgotten) => (0.0, String::new()),
            90.0 => (pull, format!(" - {tension}")),
            _ => (pull * turned.sin(), format!(" - {tension}*sin({angle})")),
        };
        let hx = -paper.rope.side * level;
        let sign = if paper.rope.side > 0.0 { "-" } else { "" };
        if level != 0.0 {
            let form = format!("{sign}{level_text}");
            put(part(Part::Along(Axis::Horizontal)), form, Some(hx));
        }
        let kept = (0..sizes.len()).filter(|index| !self.forgets(*index));
        let texts: Vec<String> = kept.clone().map(|index| self.shown(sizes[index])).collect();
        let hy = kept.map(|index| sizes[index]).sum::<f64>() - upright;
        let form = format!("{}{upright_text}", texts.join(" + "));
        put(part(Part::Along(Axis::Vertical)), form, Some(hy));
        let (hx, hy) = (self.carried(hx), self.carried(hy));
        let (x, y) = (self.shown(hx.abs()), self.shown(hy.abs()));
        put(
            part(Part::Size),
            format!("sqrt({x}^2 + {y}^2)"),
            Some(hx.hypot(hy)),
        );
        if hx != 0.0 {
            let angle = (hy / hx).abs().atan().to_degrees();
            put(part(Part::Direction), format!("atan({y}/{x})"), Some(angle));
        }
    }
}
