//! A lesson's problem as a pupil sees it: points, weights, the rope, and the forces by an
//! arithmetic of its own.

use leverwright::draw::draw;
use leverwright::lesson::built_in;
use leverwright::problem::{GivenId, LoadKind, Place, Problem};
use leverwright::session::Session;
use leverwright::text::Words;
use leverwright::units::Dimension;

/// A problem drawn from a lesson.
pub(super) struct Drawn {
    pub(super) lesson: String,
    pub(super) seed: u64,
    pub(super) problem: Problem,
}

impl Drawn {
    /// So many problems of each lesson, from seeds of their own.
    pub(super) fn some(problems: u64, seed: u64) -> Vec<Drawn> {
        let mut found = Vec::new();
        for lesson in built_in() {
            for at in 0..problems {
                let seed = seed * 100_000 + at;
                found.push(Drawn {
                    lesson: lesson.id().to_owned(),
                    seed,
                    problem: draw(&lesson, seed, "en").unwrap().problem,
                });
            }
        }
        found
    }

    /// A free working of it, with nothing typed yet.
    pub(super) fn begun(&self) -> Session {
        let mut session = Session::start(self.problem.clone(), None, Words::english()).unwrap();
        session.submit("freely");
        session
    }
}

/// A weight that hangs on the body.
pub(super) struct Weight {
    pub(super) name: String,
    pub(super) mass_name: String,
    pub(super) mass: f64,
    /// Metres along the body from its hinge.
    pub(super) at: f64,
    /// The same in printed names.
    pub(super) at_name: String,
}

/// One straight body on a hinge and a rope.
pub(super) struct Scene {
    pub(super) gravity: f64,
    /// Metres from the hinge to the other end, and its name.
    pub(super) length: f64,
    pub(super) length_name: String,
    /// The unit vector along the body, from the hinge.
    pub(super) along: (f64, f64),
    pub(super) weights: Vec<Weight>,
    /// Where the rope is tied, metres along the body from the hinge, and in printed names.
    pub(super) knot: f64,
    pub(super) knot_name: String,
    /// The unit vector of the rope's pull.
    pub(super) pull: (f64, f64),
    /// The hinge's force, x to the right and y up, newtons.
    pub(super) hinge: (f64, f64),
    /// False where only upright forces act, and the hinge's force is called H.
    pub(super) level: bool,
}

pub(super) fn cross(one: (f64, f64), other: (f64, f64)) -> f64 {
    one.0 * other.1 - one.1 * other.0
}

/// The angle of the body with the horizontal, of the rope with the horizontal, and between rope and
/// body: degrees, from 0 to 90.
type Angles = [f64; 3];

impl Scene {
    pub(super) fn of(problem: &Problem) -> Scene {
        Scene::with(problem, &problem.values())
    }

    /// The scene with other numbers than the printed ones.
    pub(super) fn with(problem: &Problem, values: &[f64]) -> Scene {
        let body = problem.body();
        let support = problem.supports()[0].at;
        let hinge = problem.point(support, values);
        let place = |place: Place| {
            let point = problem.point(place, values);
            (point.x - hinge.x, point.y - hinge.y)
        };
        let far = [Place::Foot, Place::Tip].map(place);
        let size = |point: (f64, f64)| point.0.hypot(point.1);
        let end = if size(far[0]) > size(far[1]) {
            far[0]
        } else {
            far[1]
        };
        let length = size(end);
        let along = (end.0 / length, end.1 / length);
        let value = |given: GivenId| values[given.0];
        let typed = |given: GivenId| problem.given(given).symbol.typed();
        let length_name = typed(body.length);
        let at_foot = matches!(support, Place::Foot);
        let named = |place: Place| match (place, at_foot) {
            (Place::Middle, _) => format!("{length_name}/2"),
            (Place::Tip, true) | (Place::Foot, false) => length_name.clone(),
            (Place::Fraction { over, under }, true) => format!("{over}*{length_name}/{under}"),
            (Place::At(given), true) => typed(given),
            (Place::At(given), false) => format!("({length_name} - {})", typed(given)),
            _ => String::new(),
        };
        let mut weights = Vec::new();
        if let Some(mass) = body.mass {
            weights.push(Weight {
                name: body.weight_symbol.typed(),
                mass_name: typed(mass),
                mass: value(mass),
                at: size(place(body.centre)),
                at_name: named(body.centre),
            });
        }
        for load in problem.loads() {
            if let LoadKind::Mass(mass) = load.kind {
                weights.push(Weight {
                    name: load.symbol.typed(),
                    mass_name: typed(mass),
                    mass: value(mass),
                    at: size(place(load.at)),
                    at_name: named(load.at),
                });
            }
        }
        let rope = &problem.ropes()[0];
        let unit = rope.direction.unit(body, values);
        let pull = (unit.x, unit.y);
        let knot = size(place(rope.at));
        let gravity = problem.gravity();
        let moment = |weight: &Weight| {
            let place = (weight.at * along.0, weight.at * along.1);
            cross(place, (0.0, -weight.mass * gravity))
        };
        let turning: f64 = weights.iter().map(moment).sum();
        let tension = -turning / cross((knot * along.0, knot * along.1), pull);
        let weight: f64 = weights.iter().map(|weight| weight.mass * gravity).sum();
        Scene {
            gravity,
            length,
            knot_name: named(rope.at),
            length_name,
            along,
            weights,
            knot,
            pull,
            hinge: (-tension * pull.0, weight - tension * pull.1),
            level: pull.0.abs() > 1e-9,
        }
    }

    /// The pull of the rope, newtons.
    pub(super) fn tension(&self) -> f64 {
        let turning: f64 = self
            .weights
            .iter()
            .map(|weight| weight.mass * self.gravity * weight.at)
            .sum();
        (turning * self.along.0 / (self.knot * cross(self.along, self.pull))).abs()
    }

    pub(super) fn angles(&self) -> Angles {
        let acute = |sine: f64, cosine: f64| sine.abs().atan2(cosine.abs()).to_degrees();
        let dot = self.along.0 * self.pull.0 + self.along.1 * self.pull.1;
        [
            acute(self.along.1, self.along.0),
            acute(self.pull.1, self.pull.0),
            acute(cross(self.along, self.pull), dot),
        ]
    }
}

/// The three angles of [`Scene::angles`] as sums of the printed angles and right angles that hold
/// whatever the printed numbers are: `90 - theta`; without printed angles, plain numbers.
pub(super) fn angle_names(problem: &Problem) -> Vec<String> {
    let printed: Vec<usize> = (0..problem.givens().len())
        .filter(|at| problem.givens()[*at].dimension == Dimension::ANGLE)
        .collect();
    let shifts = [
        [0.0, 0.0, 0.0],
        [0.011, 0.017, 0.005],
        [-0.013, 0.007, 0.019],
    ];
    let samples: Vec<(Vec<f64>, Angles)> = shifts
        .iter()
        .map(|shift| {
            let mut values = problem.values();
            for (at, given) in printed.iter().enumerate() {
                values[*given] += shift[at % 3];
            }
            let angles = Scene::with(problem, &values).angles();
            (values, angles)
        })
        .collect();
    let mut combinations = vec![Vec::new()];
    for _ in &printed {
        let longer = combinations.iter().flat_map(|one: &Vec<f64>| {
            [0.0, 1.0, -1.0].map(|factor| {
                let mut next = one.clone();
                next.push(factor);
                next
            })
        });
        combinations = longer.collect();
    }
    let fits = |which: usize, right: f64, factors: &[f64]| {
        samples.iter().all(|(values, angles)| {
            let turned = factors.iter().zip(&printed);
            let turned: f64 = turned.map(|(factor, given)| factor * values[*given]).sum();
            (right + turned.to_degrees() - angles[which]).abs() < 1e-6
        })
    };
    let told = |right: f64, factors: &[f64]| {
        let mut text = String::new();
        let mut add = |factor: f64, name: &str| {
            let sign = match (factor < 0.0, text.is_empty()) {
                (true, true) => "-",
                (true, false) => " - ",
                (false, true) => "",
                (false, false) => " + ",
            };
            text.push_str(sign);
            text.push_str(name);
        };
        if right != 0.0 {
            add(right, &format!("{}", right.abs()));
        }
        for (factor, given) in factors.iter().zip(&printed) {
            if *factor != 0.0 {
                add(*factor, &problem.givens()[*given].symbol.typed());
            }
        }
        text
    };
    (0..3)
        .map(|which| {
            let mut found: Vec<String> = Vec::new();
            for right in [0.0, 90.0, 180.0, -90.0] {
                for factors in &combinations {
                    if fits(which, right, factors) {
                        found.push(told(right, factors));
                    }
                }
            }
            found.sort_by_key(String::len);
            let number = || format!("{:.1}", samples[0].1[which]);
            found
                .into_iter()
                .next()
                .filter(|text| !text.is_empty())
                .unwrap_or_else(number)
        })
        .collect()
}
