//! Single lines at single steps, and the verdict that a teacher would give. The problem is built
//! from its own file, so that no change of the draws moves it.

use leverwright::lesson::parse_problem;
use leverwright::session::Session;
use leverwright::text::Words;

/// The mast of these lines: 42 kg and 6.2 m at 55° with the horizontal, a dummy of 72 kg at 4.0 m,
/// the rope tied to the tip, 25° above the horizontal. By hand: Wb = 411.6 N, W1 = 705.6 N,
/// α = 35°, γ = 80°, Wb⊥ = 236.1 N, W1⊥ = 404.7 N, T = 385.0 N, Hx = −348.9 N, Hy = 954.5 N,
/// H = 1016 N, ψ = 69.9°.
const MAST: &str = include_str!("lines/mast.json");

/// The walkway: 36 kg and 4.2 m, level, a watcher of 82 kg at 2.0 m, a chest of 24 kg at the tip,
/// the rope tied at 2.2 m, 65° with the vertical. By hand: Wb = 352.8 N, W1 = 803.6 N,
/// W2 = 235.2 N, γ = 25°, T = 3588 N, Hx = −3252 N, Hy = −124.7 N, H = 3254 N.
const WALKWAY: &str = include_str!("lines/walkway.json");

/// Places in the walk of the walkway.
const WALKWAY_WEIGHT: usize = 2;
const ROPE_ANGLE: usize = 5;
const WALKWAY_LEVEL: usize = 9;
const UPRIGHT_OF_WALKWAY: usize = 10;
const LAST_SIZE: usize = 11;

const WEIGHT: usize = 2;
const ANGLE: usize = 4;
const COMPONENT: usize = 6;
const MOMENTS: usize = 9;
const PULL: usize = 10;
const LEVEL: usize = 11;
const UPRIGHT: usize = 12;
const SIZE: usize = 13;
const DIRECTION: usize = 14;

/// The step by its place in the walk, lines, and the truth of the last one, perhaps with `:` and
/// the mistake named first or a stretch of what is said (after `!`, of what is not).
type Row = (usize, &'static [&'static str], &'static str);

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // Weights: other values of g, units, signs.
    // The unknown by itself under another name settles nothing; with a value of its own it does.
    (MOMENTS, &["T = T⊥/sin 80"], "circular"), (MOMENTS, &["T⊥/sin γ = T"], "circular"), (MOMENTS, &["T = Ty/sin 25"], "circular"), (MOMENTS, &["k = 2*T", "T = k/2"], "circular"), (MOMENTS, &["x = T", "T = x"], "circular"),
    (MOMENTS, &["k = 2*T⊥", "T = k/2"], "circular"), (PULL, &["T⊥/sin 80"], "circular"), (PULL, &["k = 2T", "k/2"], "circular"), (PULL, &["T = T⊥/sin 80 = 385"], "holds"), (PULL, &["T⊥ = (236.1*3.1+404.7*4)/6.2", "T = T⊥/sin 80"], "holds"), (MOMENTS, &["T⊥ = (236.1*3.1+404.7*4)/6.2", "T = T⊥/sin 80"], "holds"),
    (MOMENTS, &["k = 2*T", "k/2*sin 80*6.2 = 236.1*3.1+404.7*4"], "holds"), (MOMENTS, &["F = T sin 80", "F*6.2 = 236.1*3.1+404.7*4"], "holds"),
    // So does an equation in which the unknown stands on both sides under two names.
    (MOMENTS, &["T⊥*L = T*L*sin γ"], "noted:whatever the forces"), (MOMENTS, &["T⊥*10 = T*10*sin 80"], "noted:whatever the forces"), (MOMENTS, &["T⊥ + 5 = T sin 80 + 5"], "noted:whatever the forces"), (MOMENTS, &["T² = Tx² + Ty²"], "noted:whatever the forces"),
    (MOMENTS, &["MT/6.2 = T sin 80"], "noted:whatever the forces"), (MOMENTS, &["M = T⊥*6.2 = T*sin 80*6.2"], "noted:whatever the forces"), (MOMENTS, &["F = T sin 80", "F*6.2 = T⊥*6.2"], "noted:whatever the forces"),
    (MOMENTS, &["T⊥*6.2 = T sin 80*6.2 = 236.1*3.1+404.7*4"], "holds"), (MOMENTS, &["T⊥^2 = (236.1*3.1+404.7*4)^2/6.2^2"], "holds"), (MOMENTS, &["T⊥*6.2 = T cos 80*6.2"], "wrong"),
    (WEIGHT, &["42*9.81"], "holds"), (WEIGHT, &["42*9.80665"], "holds"), (WEIGHT, &["411.6"], "holds"),
    (WEIGHT, &["412"], "holds"), (WEIGHT, &["411"], "rounded"), (WEIGHT, &["0.412 kN"], "holds"),
    (WEIGHT, &["-412"], "holds:the sign belongs in the sum"), (WEIGHT, &["42 kgf"], "holds"),
    (WEIGHT, &["410"], "too-few-figures"), (WEIGHT, &["412 kg"], "wrong-unit"),
    (WEIGHT, &["420"], "wrong:g = 10"), (WEIGHT, &["42*10"], "wrong:g = 10"), (WEIGHT, &["g = 10"], "wrong:g = 9.8"),
    (WEIGHT, &["g = 9.8"], "noted"), (WEIGHT, &["G = 412"], "holds"), (WEIGHT, &["W = 412"], "holds"),
    (WEIGHT, &["mg"], "holds"), (WEIGHT, &["m g"], "holds"), (ANGLE, &["m g"], "not-understood:mb, m1"),
    (WEIGHT, &["42"], "wrong:mass-for-weight"), (WEIGHT, &["42 kg"], "wrong:mass-for-weight"),
    (WEIGHT, &["42/9.8"], "wrong:divided-by-g"), (WEIGHT, &["421 N"], "wrong:slip"), (WEIGHT, &["41.2"], "wrong:slip"),
    (WEIGHT, &["4 12 N"], "not-understood"), (WEIGHT, &["411.6 kg m/s^2"], "holds"), (WEIGHT, &["412 N down"], "holds"),
    (WEIGHT, &["what is g"], "command:names at hand"), (WEIGHT, &["how do I find this"], "command:names at hand"),
    // Angles.
    (ANGLE, &["35"], "holds"), (ANGLE, &["90-55"], "holds"), (ANGLE, &["145"], "holds"), (ANGLE, &["55"], "noted"),
    (ANGLE, &["53"], "wrong:slip"),
    // A sum of other angles is no slip of a calculator.
    (ANGLE, &["80-50"], "wrong:50° is no angle of this problem"), (ANGLE, &["90-53"], "wrong:53° is no angle of this problem"), (ANGLE, &["80-35"], "wrong:do not make up"), (ANGLE, &["80-35=35"], "wrong:not equal"), (ANGLE, &["80-35=45°"], "wrong:do not make up"), (ANGLE, &["80-35=0.7854 rad"], "wrong:do not make up"),
    (ANGLE, &["80-25=35"], "wrong"), (ANGLE, &["80-25"], "noted:another angle"),
    (ANGLE + 1, &["55-35"], "wrong:do not make up"), (ANGLE, &["90-55=38"], "wrong:Check this sum"), (ANGLE + 1, &["180-55-25"], "holds"),
    // Degrees with radians behind them.
    (ANGLE, &["90-55 rad"], "wrong-unit"), (ANGLE, &["(90-55) rad"], "wrong-unit"), (ANGLE, &["35 rad"], "wrong-unit"), (ANGLE, &["0.611 rad"], "holds"),
    // Components.
    (COMPONENT, &["Wb cos 55"], "holds"), (COMPONENT, &["Wb sin 35"], "holds"), (COMPONENT, &["412*0.574"], "holds"),
    (COMPONENT, &["412*0.57"], "holds:three figures"), (COMPONENT, &["412*0.6"], "too-few-figures"),
    (COMPONENT, &["-236"], "holds:the sign belongs in the sum"), (COMPONENT, &["-Wb cos 55"], "holds"),
    (COMPONENT, &["Wb sin 55"], "wrong:complement"), (COMPONENT, &["412 cos 35"], "wrong:sine-cosine-exchanged"),
    (COMPONENT, &["337"], "wrong:sine-cosine-exchanged"), (COMPONENT, &["412"], "wrong:not-resolved"),
    (COMPONENT, &["W cos 55"], "holds"), (MOMENTS, &["W cos 55"], "not-understood:Wb, W1"), (COMPONENT, &["Wb sin a"], "not-understood:Did you mean α"),
    (COMPONENT, &["412/cos 55"], "wrong:hypotenuse-confused"), (COMPONENT, &["412 tan 35"], "wrong:tangent-used"),
    (COMPONENT, &["Wbp"], "circular"),
    // The moment sum: every form of a balance.
    (MOMENTS, &["236*3.1 + 405*4 = T*sin(80)*6.2"], "holds"), (MOMENTS, &["236*3.1 + 405*4 - T*sin(80)*6.2"], "holds"),
    (MOMENTS, &["ΣM = 236*3.1 + 405*4 - T*sin(80)*6.2 = 0"], "holds"),
    (MOMENTS, &["sum M = 236*3.1 + 405*4 - T*sin(80)*6.2 = 0"], "holds"),
    (MOMENTS, &["412*3.1*cos 55+706*4*cos 55 = T*6.2*sin 80"], "holds"), (MOMENTS, &["2351.6 = 6.106 T"], "holds"),
    (MOMENTS, &["mb*g*sin35*L/2 + m1*g*sin 35*d1 = T*sin80*L"], "holds"), (MOMENTS, &["T*sin 80 = 379 N"], "holds"),
    (LEVEL, &["Hx = T cos 25 to the right"], "wrong:not the way"), (LEVEL, &["Hx = T cos 25 to the left"], "holds"),
    (UPRIGHT, &["phi = 25", "Hy = Wb + W1 - T sin phi"], "holds"), (UPRIGHT, &["phi = 26", "Hy = Wb + W1 - T sin phi"], "wrong"),
    (PULL, &["Mtot = 412*3.1 + 706*4"], "noted"), (WEIGHT, &["Wb = 42 kg"], "wrong"), (WEIGHT, &["Wb = 42/9.8"], "wrong:divided"),
    (LEVEL, &["H = 349"], "noted:name of the"), (UPRIGHT, &["Hx = -349", "H = 349"], "noted:name of the"),
    (MOMENTS, &["412 x 3.1 x sin 35 + 706 x 4 x sin 35 = T x 6.2 x sin 80"], "holds"),
    (WEIGHT, &["21 kg*19.6 m/s²"], "noted"), (WEIGHT, &["(40 kg + 2 kg)*9.8 m/s²"], "noted"), (WEIGHT, &["42*9.8 kg"], "wrong-unit"),
    (UPRIGHT, &["Wb + W1 = T"], "wrong:not equal"), (WEIGHT, &["Wb*L/2 + W1*d1 = Tx*d1"], "wrong"),
    (MOMENTS, &["Hy = 385 N"], "wrong"), (MOMENTS, &["412*3.1*sin 35+706*4*sin 35=6.2"], "wrong"),
    (COMPONENT, &["412*0.819"], "wrong:Perhaps sine and cosine exchanged"), (ANGLE, &["412 sin 35"], "noted"),
    (MOMENTS, &["412*3.1/sin 35 + 706*4/sin 35 = T*6.2/sin 80"], "wrong:You divided by the ratio"),
    (MOMENTS, &["412*3.1*sin 35+706*4*sin 35 = T*6.2*0.98"], "holds:three figures"), (MOMENTS, &["2351.6 = 6.13 T"], "rounded"),
    (WEIGHT, &["42*9.8 = 410"], "too-few-figures"), (WEIGHT, &["42*9.8 = 4e2"], "too-few-figures"), (WEIGHT, &["42*9.8 = 412 = 410"], "too-few-figures"), (WEIGHT, &["42*9.8 = 412 = 420"], "wrong"), (WEIGHT, &["42*9.8 = 412"], "holds"),
    (WEIGHT, &["Wb = 100*42*9.8 - 99*42*9.8 = 500"], "too-few-figures"), (WEIGHT, &["Wb = 100*42*9.8 - 99*42*9.8 = 412"], "holds"),
    (COMPONENT, &["412.5 sin 35"], "noted"), (COMPONENT, &["414 sin 35"], "wrong"), (DIRECTION, &["1.0 rad"], "wrong"), (DIRECTION, &["1.2 rad"], "too-few-figures"),
    (DIRECTION, &["1.22 rad"], "holds"),
    (MOMENTS, &["T*sin80*6.2 - 2351.6 = 0"], "holds"), (MOMENTS, &["F = 385 N"], "holds"),
    (MOMENTS, &["Hx*0 + Hy*0 + 236*3.1 + 405*4 = T*sin 80*6.2"], "noted:still unknown"),
    (MOMENTS, &["236*3.1 + 405*4 + 20 = T*sin(80)*6.2"], "wrong"), (MOMENTS, &["236*3.3 + 405*4 = T*sin(80)*6.2"], "wrong"),
    (MOMENTS, &["236*3.1 + 405*4 = T*cos(80)*6.2"], "wrong:sine-cosine-exchanged"),
    (MOMENTS, &["236*6.2 + 405*4 = T*sin 80*6.2"], "wrong:own-weight-at-tip"),
    // The distance of the unknown's term, or the unknown, is missing.
    (MOMENTS, &["236*3.1+405*4=T*sin 80"], "wrong:without its distance from the pivot"), (MOMENTS, &["236*3.1+405*4-T*sin 80=0"], "wrong:its distance from the pivot is missing"),
    (MOMENTS, &["2352 = T*0.985"], "wrong:without its distance from the pivot"), (MOMENTS, &["236*3.1+405*4=T*sin 40"], "wrong:its distance from the pivot is missing"),
    (MOMENTS, &["236+405=T*sin 80"], "wrong:forces-for-moments"), (MOMENTS, &["236*3.1+405*4=6.1"], "wrong:T does not stand in this line"),
    (MOMENTS, &["236*3.1+405*4=6.2*sin 80"], "wrong:T does not stand in this line"), (MOMENTS, &["236*3.1+405*4=2352"], "noted:the sum of the moments"),
    // Names of her own.
    (MOMENTS, &["x = 2352", "y = 6.106", "T = x/y"], "holds"),
    (MOMENTS, &["M1 = 236*3.1", "M2 = 405*4", "M1 + M2 = T*sin 80*6.2"], "holds"),
    (MOMENTS, &["h = 6.2*sin 80", "236*3.1 + 405*4 = T*h"], "holds"),
    (MOMENTS, &["a = T sin 80"], "noted:multiple of T"), (MOMENTS, &["a = T sin 80", "236*3.1 + 405*4 = a*6.2"], "holds"),
    (MOMENTS, &["d = 6.2*sin 80", "T*d = 2351.6"], "holds"),
    // A letter that is not near the name asked claims nothing of it, whatever stands behind it.
    (UPRIGHT, &["G = Wb + W1"], "noted:judged when you use it"), (SIZE, &["G = Wb + W1"], "noted:judged when you use it"), (UPRIGHT, &["F = 412+706"], "noted:judged when you use it"), (UPRIGHT, &["S = Wb + W1", "Hy = S - T sin 25"], "holds"), (UPRIGHT, &["S = Wb + W1", "Hy = S - T"], "wrong"),
    (PULL, &["M = 236*3.1+405*4"], "noted:judged when you use it"), (PULL, &["M = 236*3.1+405*4", "T = M/(6.2*sin 80)"], "holds"), (PULL, &["M = 236*3.1+405*4", "T = M"], "wrong"), (MOMENTS, &["F = (412*3.1+706*4)/6.2"], "noted:judged when you use it"), (PULL, &["F = (412*3.1+706*4)/6.2", "T = F"], "wrong:not-resolved"),
    (LEVEL, &["V = T sin 25"], "noted:judged when you use it"), (LEVEL, &["V = T sin 25", "Hx = -V"], "wrong"), (LEVEL, &["F = T sin 25"], "noted:judged when you use it"), (LEVEL, &["F = T cos 25"], "holds"), (LEVEL, &["Hx = T sin 25"], "wrong:sine-cosine-exchanged"),
    (WEIGHT, &["G = 42/9.8"], "wrong:divided-by-g"), (COMPONENT, &["G = Wb + W1"], "noted:judged when you use it"),
    // A wrong distance under a name of her own is none that is missing.
    (MOMENTS, &["h = 6.2 cos 80", "T*h = 236*3.1+405*4"], "wrong:sine-cosine-exchanged"), (MOMENTS, &["h = 2", "T*h = 236*3.1+405*4"], "wrong:!distance"), (MOMENTS, &["h = 6.2", "T*h*sin 80 = 236*3.1+405*4"], "holds"), (MOMENTS, &["h = 2", "T*h*sin 80 = 236*3.1+405*4"], "wrong:!distance"),
    (MOMENTS, &["k = sin 80", "T*k = 236*3.1+405*4"], "wrong:without its distance"), (MOMENTS, &["k = cos 80", "T*k = 236*3.1+405*4"], "wrong:its distance from the pivot is missing"), (MOMENTS, &["k = sin 80", "T*k*6.2 = 236*3.1+405*4"], "holds"), (MOMENTS, &["M = 236*3.1+405*4", "M = T sin 80"], "noted"), (MOMENTS, &["M = 236*3.1+405*4", "T sin 80 = M"], "wrong:arm-not-divided-out"),
    // A balance about another point where the size is asked is noted, as where a part was.
    (SIZE, &["T*sin 25*3 + Hx*0 = Wb*1.5"], "wrong"), (SIZE, &["Hy*6.2*sin 35 - Hx*6.2*cos 35 = Wb*3.1*sin 35 + W1*2.2*sin 35"], "noted"), (SIZE, &["Hy + T*sin 25 = Wb + W1 + 100"], "wrong"), (SIZE, &["Hy = Wb + W1"], "wrong"), (SIZE, &["H*6.2 = Hy*5 + Wb*2"], "wrong"),
    // The pull: forms of a number, slips of the pen.
    (PULL, &["385 N"], "holds"), (PULL, &["T = 385 N up"], "holds"), (PULL, &["T = approx. 385 N"], "holds"),
    (PULL, &["T ca. 385 N"], "holds"), (PULL, &["T => 385 N"], "holds"), (PULL, &["T -> 385"], "holds"),
    (PULL, &["T = 2349/6.1"], "holds"), (PULL, &["T=385.19"], "rounded"), (PULL, &["380 N"], "too-few-figures"),
    (PULL, &["-385"], "wrong:only pulls"), (PULL, &["T = 384.6"], "rounded"), (PULL, &["T = 383.6"], "wrong"),
    (PULL, &["358 N"], "wrong:slip"), (PULL, &["38.5 N"], "wrong:slip"), (PULL, &["3850 N"], "wrong:slip"), (PULL, &["388 N"], "wrong:slip"),
    // The rope's sign in a sum that must vanish; whole forces.
    (MOMENTS, &["236*3.1 + 405*4 + T*sin 80*6.2 = 0"], "wrong:turns the same way"),
    (MOMENTS, &["412*3.1 + 706*4 = T*6.2"], "wrong:not-resolved"),
    (MOMENTS, &["clockwise moments = anticlockwise moments"], "noted:That is the idea"),
    (WEIGHT, &["400 N"], "too-few-figures"), (PULL, &["0.38 kN"], "too-few-figures"),
    (LEVEL, &["955 N downwards"], "wrong"), (LEVEL, &["955 N"], "wrong"), (LEVEL, &["Hy = 955 N"], "rounded"),
    (SIZE, &["294*6.6 = 0.906 T*3.8", "go on"], "command:no value"),
    // Mended after going on: what followed from the first no longer counts.
    (MOMENTS, &["236*6.2+405*4 = T*sin 80*6.2", "go on", "back", "236*3.1+405*4 = T*sin 80*6.2", "505"], "wrong"),
    // A typed radian proves itself; a value shows it only perhaps.
    (COMPONENT, &["412*sin(35 rad)"], "wrong:You measured the angle in radians"), (COMPONENT, &["-176"], "wrong:Perhaps a calculator"),
    (COMPONENT + 2, &["T*sin(80 rad)"], "wrong:You measured"), (MOMENTS, &["236*3.1 + 405*4 = T*sin(80 rad)*6.2"], "wrong:You measured"),
    // The component set equal to the pull, and the other way about.
    (PULL, &["T sin 80 = 385"], "wrong:as large as its own component"), (PULL, &["T = 385*sin 80"], "wrong:as large as its own component"),
    // A number alone after steps passed over: a whole working on paper, wrong from its first step.
    (PULL, &["3118"], "wrong:exchanged, for more than one force"), (PULL, &["265"], "wrong:own-weight-left-out"),
    (PULL, &["39.3"], "wrong:mass-for-weight"), (PULL, &["671.4"], "wrong:not-resolved"), (PULL, &["284.8"], "wrong:Perhaps a calculator"),
    // But not what stands by a line of her own.
    (COMPONENT, &["236", "405", "T sin 80", "236*3.1+405*4=T*sin 80*6.2", "265"], "wrong:not the tension of the rope yet"),
    (COMPONENT, &["236", "405", "T sin 80", "236*3.1+405*4=T*sin 80*6.2", "2351/6.2"], "wrong:stopped-at-component"),
    (COMPONENT, &["236", "405", "T sin 80", "236*3.1+405*4=T*sin 80*6.2", "2183"], "wrong:exchanged-at-the-end"),
    (COMPONENT, &["236", "405", "T sin 80", "265"], "wrong:own-weight-left-out"), (COMPONENT, &["236", "skip", "T sin 80", "skip", "2183"], "wrong:exchanged-at-the-end"),
    // Rounded to two figures on the way.
    (PULL, &["376"], "wrong:rounded to two figures"), (PULL, &["394"], "wrong:rounded to two figures"),
    // What was written is told, not what comes to the same.
    (UPRIGHT, &["412+706-385*cos 25"], "wrong:You took cos β"),
    (PULL, &["(412*3.1+706*4)*cos 35/(6.2*sin 80)"], "wrong:You took cos α for Wb"), (COMPONENT, &["0"], "wrong:not the part"),
    // A part too many, a sine read until it fits, a number that comes from nowhere.
    (COMPONENT + 2, &["T sin80 + 1"], "wrong:the part marked"), (COMPONENT + 2, &["T sin80+Wb/400"], "wrong:the part marked"),
    (COMPONENT + 2, &["T sin80+20"], "wrong"), (COMPONENT + 2, &["T sin40*2"], "wrong"), (COMPONENT + 2, &["T cos10*cos10"], "wrong"),
    (COMPONENT, &["Wb sin70/2"], "wrong"), (COMPONENT, &["Wb sin5*7"], "wrong"),
    (MOMENTS, &["236*3.1+405*4=T*sin80*6.2+1"], "wrong:the part marked"), (MOMENTS, &["236*3.1+405*4+3=T*sin80*6.2"], "wrong:the part marked"),
    (PULL, &["Wb*sin69.3"], "noted:value agrees"), (MOMENTS, &["Wb-T=26.6"], "noted:comes out right"),
    (WEIGHT, &["42*9.8 kg"], "wrong-unit"), (WEIGHT, &["9.8*42 kg"], "holds"), (MOMENTS, &["Wb⊥*L/2+W1⊥*d1=T⊥*L = 2350 N"], "mismatched"),
    (PULL, &["T=385=386"], "wrong"), (MOMENTS, &["0=0"], "noted:says nothing"), (MOMENTS, &["T*sin80*6.2=T*sin80*6.2"], "noted:says nothing"),
    (LEVEL, &["→ 349"], "wrong:not the way"), (LEVEL, &["← 349"], "holds"), (SIZE, &["H²=1032000"], "noted:It holds"),
    (DIRECTION, &["tan ψ = 2.733"], "noted:It holds"), (DIRECTION, &["cos ψ=0.3435"], "noted:It holds"),
    (MOMENTS, &["Wb*1.78+W1*2.29=6.11*T"], "holds"), (MOMENTS, &["a=6.2 sin80", "T*a = 2351"], "holds"), (UPRIGHT, &["ΣFy=0: Hy = 954"], "holds"),
    (WEIGHT, &["mass*gravity"], "holds"), (WEIGHT, &["mass times g"], "holds"), (WEIGHT, &["ca. 412 N"], "holds"), (LEVEL, &["-T sin 25"], "wrong:You took"), (SIZE, &["1040"], "wrong"),
    (WEIGHT, &["1016"], "wrong"), (MOMENTS, &["42*10*sin35*3.1+72*10*sin35*4=T*sin80*6.2"], "wrong:g = 10"),
    // What only comes out right shows nothing; what is given is exact; a chain must calculate.
    (MOMENTS, &["236*6.2+405*2.2=6.2*T*sin(80)"], "noted:comes out right"),
    (MOMENTS, &["236*3.1+405*4=6.2*T*sin(79)"], "noted:comes out right"),
    (MOMENTS, &["236*3.1+405*3.99=6.2*T*sin(80)"], "noted:comes out right"),
    (MOMENTS, &["236*2.9+405*4.12=6.2*T*sin(80)"], "noted:comes out right"),
    (MOMENTS, &["(236*3.1+405*4)*cos(4)=6.2*T*sin 80"], "noted:comes out right"),
    (WEIGHT, &["41.9*9.8"], "wrong"), (WEIGHT, &["42*9.8=412.9"], "wrong"), (WEIGHT, &["42*9.8=411"], "holds"),
    (COMPONENT, &["Wb sin 34.9"], "noted:value agrees"), (ANGLE, &["34.9"], "wrong"), (ANGLE, &["35.0"], "holds"),
    (COMPONENT, &["412*sin 35 = 238"], "wrong"), (COMPONENT, &["412*sin 35 = 236"], "holds"),
    (COMPONENT, &["42*9.8*0.574 = 236"], "holds"), (PULL, &["2352/6.11 = 385"], "holds"), (PULL, &["2352/6.11 = 386"], "wrong"), (PULL, &["2352/6.11 = 388"], "wrong"),
    // Moments, their sums and arms worked out on the way, with three figures.
    (MOMENTS, &["732 + 1620 = 6.11*T"], "holds"), (MOMENTS, &["2352 = 6.106 T"], "holds"), (MOMENTS, &["2350 = 6.11 T"], "holds"),
    (MOMENTS, &["731 + 1620 - 6.2*T*0.985 = 0"], "holds"), (MOMENTS, &["1277*sin35 + 2822*sin35 = 6.106*T"], "holds"),
    (MOMENTS, &["(130.2 + 288)*9.8*sin 35 = 6.2*T*sin 80"], "holds"), (MOMENTS, &["412*1.78 + 706*2.29 = 6.11 T"], "holds"),
    (MOMENTS, &["4100*sin35 = 6.106*T"], "holds"), (MOMENTS, &["418.2*9.8*sin35 = 6.106*T"], "holds"),
    (MOMENTS, &["M_b + M_1 = M_T"], "holds"), (LEVEL, &["385*sin 65"], "holds"), (LEVEL, &["T*cos(80-55)"], "holds"), (PULL, &["2352/6.11"], "holds"), (PULL, &["(732+1620)/6.11"], "holds"),
    (UPRIGHT, &["1118 - 163"], "holds"), (UPRIGHT, &["Hy + Ty = Wb + W1"], "noted:It holds"), (UPRIGHT, &["Wb + W1 - Hy = Ty"], "noted:It holds"),
    // A number for a part of what is still unknown tells nothing.
    (COMPONENT + 2, &["379"], "noted:Leave T as a letter"), (COMPONENT + 2, &["300 N"], "noted:Leave T as a letter"),
    (PULL, &["385.9"], "rounded"), (MOMENTS, &["-236*3.1 + T*sin 80*6.2 = 405*4", "go on"], "command"),
    // A unit behind a product is the product's; a thousand too many is a matter of the unit.
    (WEIGHT, &["42*9.8 N"], "holds"), (WEIGHT, &["42×9.8N"], "holds"), (WEIGHT, &["412 kN"], "wrong-unit:another unit"), (WEIGHT, &["-0.412 kN"], "holds"),
    (COMPONENT, &["412*sin 35 N"], "holds"), (PULL, &["2352/6.106 N"], "holds"),
    // True of what is known, and not what is asked.
    (LEVEL, &["6.2*T*sin 80 - 236*3.1 - 405*4 = 0"], "noted:It holds"), (LEVEL, &["385*6.2*sin 80 - 2352 = 0"], "noted:It holds"),
    (SIZE, &["T^2 = Tx^2 + Ty^2"], "noted:It holds"), (SIZE, &["385^2 = 349^2+163^2"], "noted:It holds"), (SIZE, &["385^2 = 349^2+183^2"], "wrong"),
    (MOMENTS, &["236*3.1 + 405*4 = 0"], "noted:sum of the moments"),
    // An angle in radians, stretches between points, a difference of near values.
    (MOMENTS, &["236*3.1 + 405*4 = T*6.2*sin(1.396 rad)"], "holds"), (MOMENTS, &["236*3.1 + 405*4 = T*6.2*sin(1.37 rad)"], "noted"),
    (MOMENTS, &["Wb⊥*3.1 + W1⊥*2.2 = Hp*6.2"], "not-understood"), (MOMENTS, &["405*2.2 + 236*3.1 = (236+405-T sin 80)*6.2"], "holds"),
    // Every link of a chain calculates, those with the unknown too; coarse numbers show no way.
    (MOMENTS, &["236*3.1+405*4=6.2*T*sin 80=100*T"], "wrong"), (MOMENTS, &["236*3.1+405*4=6.2*T*sin 80=6.11*T"], "holds"),
    (ANGLE, &["90-55=36"], "wrong"), (ANGLE, &["90-55=60"], "wrong"), (ANGLE, &["90-55=35"], "holds"), (DIRECTION, &["90-20=60"], "wrong"),
    (DIRECTION, &["asin(0.9)"], "too-few-figures"), (MOMENTS, &["236*3.1+405*4=6*T"], "wrong"), (MOMENTS, &["2352=6.2*T"], "wrong:not-resolved"),
    (COMPONENT, &["412*sin 35=800*0.4=236"], "wrong"), (UPRIGHT, &["1118-163=965"], "wrong"), (SIZE, &["sqrt(349^2+955^2)=1030"], "wrong"),
    // An own part gone on with; a whole solution where a step before it is asked.
    (UPRIGHT, &["Ty = 221 N", "go on", "Hy = Wb + W1 - Ty"], "follows:line 1"), (UPRIGHT, &["Ty = 165 N", "go on", "Hy = 412 + 706 - Ty"], "follows:line 1"),
    (WEIGHT, &["T = 385 N"], "holds:passed over with skip"), (COMPONENT, &["T = (236*3.1 + 405*4)/(6.2*sin 80)"], "holds:passed over with skip"),
    (LEVEL, &["Hx = -T cos 25 = -348.9 N"], "holds"), (DIRECTION, &["Hy/Hx = 2.7"], "wrong"), (SIZE, &["H/T = 2.64"], "noted"), (ANGLE + 1, &["130-50"], "noted"),
    (MOMENTS, &["Hy*6.2*sin 35 - Hx*6.2*cos 35 = Wb*3.1*sin 35 + W1*2.2*sin 35"], "noted"),
    (SIZE, &["sqrt(Hy^2-Hx^2)"], "wrong"), (WEIGHT, &["42.9*9.8"], "wrong"), (ANGLE, &["gamma"], "noted:Asked here"), (ANGLE, &["10*35-9*35=38"], "wrong"),
    (COMPONENT, &["Wb cos 35", "go on", "706 cos 35", "go on", "T sin 80", "337*3.1+578*4=T*sin 80*6.2", "550", "499"], "follows:points to the left"),
    // The way of a direction, in two parts; named angles are told, not found somewhere.
    (DIRECTION, &["69.9 to the left"], "holds"), (DIRECTION, &["69.9 to the right"], "wrong:point another way"), (DIRECTION, &["69.9° above the horizontal, to the left"], "holds"),
    (DIRECTION, &["69.9° up and left"], "holds"), (DIRECTION, &["69.9° (above the horizontal)"], "holds"), (LEVEL, &["349 N (left)"], "holds"),
    (ANGLE, &["alpha = 55"], "wrong"), (LEVEL, &["-T sin 80"], "wrong"),
    (MOMENTS, &["236*3.1 N m + 405*4 N m = T*sin 80*6.2 m"], "holds"),
    // A direction is right as it is counted: the angle with the horizontal, or anticlockwise from +x.
    (DIRECTION, &["-69.9"], "wrong:point another way"), (DIRECTION, &["69.9 from the positive x axis"], "wrong:not with that line"),
    (DIRECTION, &["69.9 from the negative x axis"], "holds"), (DIRECTION, &["110.1 from the positive x-axis"], "holds"),
    (DIRECTION, &["110.1 up and to the right"], "wrong:point another way"), (DIRECTION, &["110.1 up and to the left"], "holds"),
    (DIRECTION, &["69.9 from the vertical"], "wrong:not with that line"), (DIRECTION, &["20.1 from the vertical"], "noted"),
    (DIRECTION, &["290.1"], "wrong:point another way"), (DIRECTION, &["90+atan(954.5/348.9)"], "wrong"),
    (DIRECTION, &["180-atan(954.5/348.9)"], "holds"), (DIRECTION, &["atan(348.9/954.5)"], "wrong:That is the angle of H with the vertical"),
    (DIRECTION, &["90-69.9"], "wrong:Perhaps the angle taken from the other axis (H). Mend"),
    (DIRECTION, &["20.1"], "wrong:A number alone cannot prove it"), (DIRECTION, &["H=sqrt(348.9^2+954.5^2)=1020"], "holds"),
    (DIRECTION, &["H=sqrt(348.9^2+954.5^2)=1060"], "wrong:Check this sum"),
    // A sum of forces is no balance of moments, and where it is true no mistake.
    (MOMENTS, &["Wb+W1=1117.2"], "noted"), (MOMENTS, &["Wb+W1=1401.4"], "wrong:Check this sum"), (MOMENTS, &["1117.2=W1+Wb"], "noted"),
    (MOMENTS, &["411.6+705.6=1117.2"], "noted"), (MOMENTS, &["T=Wb+W1"], "wrong:adds forces"),
    // The whole divided by g is no mass for a weight; a tangent is a tangent.
    (PULL, &["T=(Wbp*L/2+W1p*d1)/9.8/(L*sin γ)"], "wrong:the part marked"),
    (PULL, &["(42*sin 35*3.1+72*sin 35*4)/(6.2*sin 80)"], "wrong:mass-for-weight"),
    (PULL, &["T=(Wbp*L/2+W1p*d1)/(L*tan γ)"], "wrong:tangent-used"),
    // Under a root stands the other side of the triangle.
    (COMPONENT, &["sqrt(Wb^2-(Wb sin 35)^2)"], "wrong:sine-cosine-exchanged"), (COMPONENT, &["sqrt(Wb^2-(Wb sin 55)^2)"], "holds"),
    // Of two angles the larger is told less the smaller; components worked before show as terms.
    (ANGLE + 1, &["55-25"], "wrong:You wrote θ − β"),
    (MOMENTS, &["337.2*3.1+578*4=T*sin 80*6.2"], "wrong:Perhaps sine and cosine exchanged, for more than one force"),
    // A multiple of the unit behind names.
    (COMPONENT, &["Wb sin 35 kN"], "wrong-unit"), (COMPONENT, &["Wb sin 35 N"], "holds"), (COMPONENT, &["0.2361 kN"], "holds"),
    (LEVEL, &["T cos 25 kN"], "wrong-unit"),
    (WEIGHT, &["42*9.8 kN"], "wrong-unit"), (COMPONENT, &["412 N*sin 35 kN"], "wrong-unit"), (COMPONENT, &["412*sin 35 kN"], "wrong-unit"),
    (COMPONENT, &["0.412 kN*sin 35 kN"], "holds"), (COMPONENT, &["0.412*sin 35 kN"], "holds"), (COMPONENT, &["412 N*sin 35 N"], "holds"),
    (COMPONENT, &["Wb sin 35/1000 kN"], "holds"), (COMPONENT, &["412 N*sin 35/1000 = 0.236 kN"], "holds"), (COMPONENT, &["412 N*sin 35/1000 = 0.337 kN"], "wrong"),
    (PULL, &["(236 N*3.1 m+405 N*4 m)/(6.2 m*sin 80)"], "holds"), (PULL, &["(236 N*3.1 m+405 N*4 m)/(6.2 m*sin 80) kN"], "wrong-unit"), (PULL, &["(236*3.1+405*4)/(6.2*sin 80) kN"], "wrong-unit"),
    // A capital G of her own is a name like another where moments are asked.
    (MOMENTS, &["G = 100"], "noted:It is judged when you use it"), (MOMENTS, &["G = 1117"], "noted:It is judged when you use it"), (MOMENTS, &["G = 42*9.8+72*9.8"], "noted:It is judged when you use it"),
    // What is concluded from a name of her own is judged by itself.
    (MOMENTS, &["M = 236*3.1+405*4 = 2352 => T = 385 N"], "holds"), (MOMENTS, &["M = 236*3.1+405*4 = 2352, T = 385 N"], "holds"), (MOMENTS, &["M = 236*3.1+405*4 => T = 300 N"], "wrong"), (MOMENTS, &["M = 2352, N = 3"], "noted:It is judged when you use it"),
    // A bare number of her own is in degrees in a sum of angles.
    (ANGLE, &["b = 55", "alpha = 90 - b"], "holds"), (ANGLE, &["b = 50", "alpha = 90 - b"], "wrong"), (ANGLE, &["x = 55", "y = 90 - x"], "holds"), (ANGLE, &["b = 55", "alpha = 80 - b"], "wrong"),
    // A level balance is true with the part as she counted it.
    (UPRIGHT - 1, &["-349 N", "Tx + Hx = 0"], "noted:It holds"), (UPRIGHT - 1, &["349 N", "Hx = 349 N", "T cos 25 + Hx = 0"], "noted:It holds"), (UPRIGHT - 1, &["349 N", "Hx + T = 0"], "wrong"),
    // A part of the pull that she has told is that part, and not a slip.
    (LEVEL, &["Ty = T sin 25", "Ty"], "noted:That is the upright part of T"), (LEVEL, &["T sin 25"], "wrong:sine-cosine-exchanged"), (LEVEL, &["162.7"], "wrong:sine-cosine-exchanged"),
    // The mass that stands for a weight is hers, though it is given too.
    // Sums rounded on the way, with the unknown behind them or before.
    (MOMENTS, &["236*3.1+405*4 = 732+1620 = 2352 = 6.2*T*sin 80"], "holds"), (MOMENTS, &["732 + 1620 = 2352 = 6.11 T"], "holds"), (MOMENTS, &["6.2*T*sin 80 = 732 + 1620 = 2352"], "holds"), (MOMENTS, &["6.2*T*sin 80 = 2352 = 2500"], "wrong"), (MOMENTS, &["2352 = 6.2*T*sin 80 = 5*T"], "wrong"), (MOMENTS, &["2352 = 6.2*T*sin 80 = 6.11*T"], "holds"), (MOMENTS, &["2352 = 6.2*T*sin 80 = 2500"], "wrong"), (MOMENTS, &["236*3.1+405*4 = 2552 = 6.2*T*sin 80"], "wrong"),
    (ANGLE, &["55", "go on", "80", "412 sin 55", "706 sin 55", "T sin 80", "337*3.1+578*4 = 3357 = 6.2*T*sin 80"], "follows"), (ANGLE, &["55", "go on", "80", "412 sin 55", "706 sin 55", "T sin 80", "337*3.1+578*4 = 1045+2312 = 3357 = T*6.2*sin 80"], "follows"), (ANGLE, &["55", "go on", "80", "412 sin 55", "706 sin 55", "T sin 80", "337*3.1+578*4 = 3857 = T*6.2*sin 80"], "wrong"),
    // A wrong balance told as a chain is the learner's own as its bare form is.
    (MOMENTS, &["236*6.2+405*4 = 1463+1620 = 3083 = 6.2*T*sin 80"], "wrong:own-weight-at-tip"), (MOMENTS, &["236*6.2+405*4 = 1463+1620 = 3083 = 6.2*T*sin 80", "go on", "T = 3083/6.106 = 505 N"], "follows"), (MOMENTS, &["236*6.2+405*4 = 3083 = 6.11*T", "go on", "T = 3083/6.11 = 505 N", "-505 cos 25"], "follows:line 2"),
    // A part of the pull may have been counted to either side.
    (LEVEL, &["Tx = -385*cos 25 = -349", "Hx = -Tx = 349"], "holds"), (LEVEL, &["Tx = 385*cos 25 = 349", "Hx = -Tx = -349"], "holds"), (LEVEL, &["Tx = 385*cos 25 = 349", "Hx = -Tx = -379"], "wrong"),
    // A unit of another kind behind a form of bare numbers: the relation is right.
    (PULL, &["(236*3.1+405*4)/(6.2*sin 80) N m"], "wrong-unit"), (PULL, &["T = (236*3.1+405*4)/(6.2*sin 80) kg"], "wrong-unit"), (PULL, &["2352/6.106 m"], "holds"), (PULL, &["2352/6.106 kg"], "wrong-unit"), (PULL, &["2352/6.2 kg"], "wrong:not-resolved"),
    (LEVEL, &["385*cos 25 kg"], "wrong-unit"), (LEVEL, &["385*cos 25 N"], "holds"), (LEVEL, &["385*sin 25 kg"], "wrong:sine-cosine-exchanged"),
    (UPRIGHT, &["(1117-163) kg"], "wrong-unit"), (SIZE, &["sqrt(349^2+954^2) N m"], "wrong-unit"), (SIZE, &["sqrt(349^2+954^2) N"], "holds"), (COMPONENT, &["412*sin 35 kg"], "wrong-unit"), (WEIGHT, &["(42*9.8) kg"], "wrong-unit"),
    (MOMENTS, &["732 N + 1619 N = 6.2*T*sin 80"], "wrong-unit"), (MOMENTS, &["732 N m + 1619 N m = 6.2*T*sin 80"], "holds"), (MOMENTS, &["2351 m = 6.2*T*sin 80"], "wrong-unit"), (MOMENTS, &["2351 N = T"], "wrong"),
    // A name alone is no number of hers, but it shows its form.
    (PULL, &["236*6.2+405*4 = 6.11 T => T = 3083/6.11 = 505 N", "go on", "505*cos 25"], "follows"),
    (UPRIGHT, &["Hy = Wb + W1 + T sin 25 = 1281", "go on", "sqrt(349^2+1281^2)"], "follows"),
    // A wrong component of the unknown is taken back with its line, and stays when only the balance is.
    (COMPONENT + 2, &["T cos 80", "go on", "back", "T sin 80", "236*3.1+405*4 = T*cos 80*6.2"], "wrong"),
    (COMPONENT + 2, &["T cos 80", "go on", "back", "T cos 80"], "wrong"), (COMPONENT + 2, &["T cos 80", "go on", "T⊥ = T sin 80", "236*3.1+405*4 = T*cos 80*6.2"], "wrong"),
    (COMPONENT + 2, &["T cos 80", "go on", "236*3.1+405*4 = T*cos 80*6.2", "back", "236*3.1+405*4 = T*cos 80*6.2"], "follows"),
    (COMPONENT + 2, &["T cos 80", "go on", "236*3.1+405*4 = T*cos 80*6.2", "back", "236*3.1+405*4 = T*cos 80*6.2", "2183"], "follows"),
    // A ratio settles the component, and is no balance.
    (COMPONENT + 2, &["T⊥/T = sin 80", "2 T⊥ = 2 T sin 80"], "noted:whatever the forces"), (COMPONENT + 2, &["T⊥/T = sin 80", "236*3.1+405*4 = T⊥*6.2"], "holds"),
    // Known things that differ are not equal, whatever one of them is.
    (WEIGHT, &["72*9.8 = 750"], "wrong:not equal"), (WEIGHT, &["706 = 750"], "wrong:not equal"), (WEIGHT, &["72*9.8 = 706"], "noted"),
    (UPRIGHT, &["T sin 25 = 412 + 706"], "wrong:Hy acts along"), (UPRIGHT, &["412 + 706 = T sin 25"], "wrong:Hy acts along"), (UPRIGHT, &["Ty = Wb + W1"], "wrong:Hy acts along"), (UPRIGHT, &["Wb + W1 = Ty"], "wrong:Hy acts along"), (UPRIGHT, &["1118 = 163"], "wrong:Hy acts along"),
    (UPRIGHT, &["Wb + W1 - Ty = 0"], "wrong:Hy is not zero"), (UPRIGHT, &["412 + 706 = 385"], "wrong:not equal"), (UPRIGHT, &["163 = 385 sin 25"], "noted"), (UPRIGHT, &["412 + 706 = 163 + 955"], "noted"), (UPRIGHT, &["955 = 1118 - 163"], "rounded"),
    (UPRIGHT, &["412 + 706 = 1147"], "wrong:not T"), (UPRIGHT, &["T cos 25"], "noted:level part of T"), (LEVEL, &["T sin 25"], "wrong:sine-cosine-exchanged"),
    // A way before the size, and an arrow of two signs.
    (LEVEL, &["left 349 N"], "holds"), (LEVEL, &["to the left: 349 N"], "holds"), (LEVEL, &["349 N <-"], "holds"), (LEVEL, &["right 349 N"], "wrong"), (LEVEL, &["349 N ->"], "wrong"),
    // Her own moments over the unknown's distance are her own component; what was put again counts.
    (WEIGHT, &["42", "go on", "706", "35", "80", "42 sin 35", "706 sin 35", "T sin 80", "273 = T sin 80"], "follows"), (WEIGHT, &["42", "go on", "706", "35", "80", "42 sin 35", "706 sin 35", "T sin 80", "282 = T sin 80"], "wrong"),
    // What she told as a size leaves no room in a chain behind its name.
    (LEVEL, &["T cos 25", "Wb + W1 - T sin 25", "H = sqrt(Hx^2+Hy^2) = 2000"], "wrong:not its value"), (LEVEL, &["T cos 25", "Wb + W1 - T sin 25", "H = sqrt(Hx^2+Hy^2) = 1017"], "holds"), (PULL, &["600", "go on", "T cos 25", "Wb + W1 - T sin 25", "H = sqrt(Hx^2+Hy^2) = 2000"], "wrong:not its value"),
    // A part that she said to point so does, whatever its size.
    (LEVEL, &["105 N right", "go on", "955", "skip", "83.7 to the right"], "follows"), (LEVEL, &["105 N left", "go on", "955", "skip", "83.7 to the left"], "follows"), (LEVEL, &["105 N left", "go on", "955", "skip", "83.7 to the right"], "wrong"),
    // A wrong component of the unknown that she goes on with does not stand.
    (COMPONENT + 2, &["T cos 80", "go on", "236*3.1+405 = T*cos 80*6.2"], "wrong:!Everything before it stands"), (MOMENTS, &["236*3.1+405 = T*sin 80*6.2 + 300"], "wrong"),
    // The squares that a size is made of are told true or false, and are no size.
    (SIZE, &["349^2 + 955^2 = 1033826"], "noted"), (SIZE, &["121801 + 912025 = 1033826"], "noted"), (SIZE, &["121801 + 912025 = 1133826"], "wrong:not equal"),
    (WEIGHT, &["weight of the mast pole = 412 N"], "holds"), (WEIGHT, &["angle between the rope and the mast = 80"], "holds:settles the angle"),
    (PULL, &["600", "go on", "T"], "wrong:whole-tension-sideways"),
    // In which sense a part is counted is told.
    (LEVEL, &["T cos 25 + Hx = 0"], "noted:Hx counts to the right in it"), (LEVEL, &["T cos 25 = Hx + 0"], "noted:Hx counts to the left in it"),
    // Own values used one step early, and only the lines that are used.
    (WEIGHT, &["42", "go on", "706", "35", "80", "42*sin 35"], "follows"), (WEIGHT, &["412", "72", "go on", "35", "80", "72*sin 35"], "noted:part of W1"),
    // Going on with a wrong line.
    (MOMENTS, &["Wb+W1=T", "go on", "1118"], "follows"), (MOMENTS, &["236*3.1+405*4=T*sin80", "go on", "2388"], "follows"),
    (PULL, &["400", "go on", "400*cos 25"], "follows"), (PULL, &["400", "go on", "385*cos 25"], "holds"),
    (MOMENTS, &["236*6.2+405*4 = T*sin 80*6.2", "go on", "505"], "follows"),
    (MOMENTS, &["236*6.2+405*4 = T*sin 80*6.2", "go on", "385"], "holds"),
    (COMPONENT, &["Wb sin 55", "go on", "706 cos 55"], "holds"),
    (COMPONENT, &["Wb sin 55", "go on", "706 cos 55", "T sin 80", "337*3.1+405*4 = T*sin 80*6.2"], "follows"),
    (COMPONENT, &["Wb sin 55", "go on", "706 cos 55", "T sin 80", "236*3.1+405*4 = T*sin 80*6.2"], "holds"),
    // Of a value of her own and a later one that stands right, what lies between follows from neither.
    (WEIGHT, &["42", "go on", "706", "skip", "skip", "skip", "skip", "skip", "skip", "skip", "310"], "wrong"),
    (WEIGHT, &["42", "go on", "706", "skip", "skip", "skip", "skip", "skip", "skip", "skip", "251.5"], "follows:line 1"),
    (WEIGHT, &["42", "go on", "706", "skip", "skip", "skip", "skip", "skip", "skip", "skip", "349"], "holds"),
    (WEIGHT, &["42", "go on", "706", "skip", "skip", "skip", "skip", "skip", "skip", "385", "349", "42+706-162.7"], "follows"),
    (WEIGHT, &["42", "go on", "706", "skip", "skip", "skip", "skip", "skip", "skip", "385", "349", "585 N up"], "follows"),
    (WEIGHT, &["42", "go on", "706", "skip", "skip", "skip", "skip", "skip", "skip", "385", "349", "800 N up"], "wrong"),
    // What follows from a value of her own, to more figures than she typed; her own form again.
    (WEIGHT, &["42", "go on", "706", "35", "80", "24.1", "405", "T sin 80", "24.09*3.1+405*4=T*sin 80*6.2"], "follows"),
    (WEIGHT, &["42", "go on", "706", "35", "80", "24.1", "405", "T sin 80", "24.89*3.1+405*4=T*sin 80*6.2"], "wrong"),
    (WEIGHT, &["42", "go on", "706", "35", "80", "24.09*3.1+405*4=T*sin 80*6.2"], "follows"), (WEIGHT, &["42", "go on", "706", "35", "80", "25.09*3.1+405*4=T*sin 80*6.2"], "wrong"),
    (WEIGHT, &["43*9.8", "go on", "706", "35", "80", "skip", "skip", "skip", "43*9.8*sin 35*3.1+405*4=T*sin 80*6.2"], "follows:line 1"),
    (WEIGHT, &["43*9.8", "go on", "706", "35", "80", "skip", "skip", "skip", "44*9.8*sin 35*3.1+405*4=T*sin 80*6.2"], "wrong"),
    // With many values of her own, those that a step rests on count first.
    (WEIGHT, &["42", "go on", "72", "go on", "55", "go on", "80", "42 sin 55", "72 sin 55", "T cos 80", "go on", "34.4*3.1+59*4=T cos 80*6.2", "318 N", "-288.4", "42+72-134.5", "sqrt(288.4^2+20.5^2)"], "follows"),
    (WEIGHT, &["42", "go on", "72", "go on", "55", "go on", "80", "42 sin 55", "72 sin 55", "T cos 80", "go on", "34.4*3.1+59*4=T cos 80*6.2", "318 N", "-288.4", "42+72+134.5"], "wrong"),
    // A way said with a value: of a weight, a component, a pull and a whole force too. A line along
    // which it lies says no sense; a sign and a word are taken together.
    (WEIGHT, &["412 N upwards"], "wrong:does the Earth pull"), (WEIGHT, &["42*9.8 up"], "wrong:not the way"), (WEIGHT, &["412 N left"], "wrong:not the way"),
    (WEIGHT, &["0.412", "go on", "706", "35", "80", "412 sin 35"], "holds"), (WEIGHT, &["0.412"], "wrong:in kN"),
    (WEIGHT, &["-412 N up"], "holds"), (WEIGHT, &["-412 N down"], "holds"), (WEIGHT, &["412 N up", "go on", "706", "35", "80", "Wb sin 35"], "holds"),
    (COMPONENT, &["236 N down"], "holds"), (COMPONENT, &["236 N left"], "holds"), (COMPONENT, &["236 N up"], "wrong:not the way"),
    (COMPONENT, &["236 N across the mast"], "holds"), (COMPONENT + 2, &["T sin 80, up"], "holds"), (COMPONENT + 2, &["T sin 80 to the left"], "wrong:not the way"),
    (PULL, &["T = 385 N left"], "wrong:the pull of the rope act"), (PULL, &["385 N down"], "wrong:not the way"), (PULL, &["385 N to the right"], "holds"),
    (PULL, &["385 N up and right"], "holds"), (PULL, &["385 N up and left"], "wrong:not the way"), (PULL, &["T = 385 N along the rope"], "holds"),
    (PULL, &["385 N at 80° to the mast"], "holds"), (PULL, &["385 N at 25° above the horizontal"], "holds"), (PULL, &["395 N along the rope"], "wrong"),
    (PULL, &["385 N along the rope, left"], "wrong:not the way"), (PULL, &["-385 N right"], "wrong:only pulls"),
    (SIZE, &["1016 N up and to the left"], "holds"), (SIZE, &["1016 N down"], "wrong:two parts point"), (SIZE, &["1016 N up"], "holds"),
    (UPRIGHT, &["-954.5 N up"], "wrong:not the way"), (UPRIGHT, &["-954.5 N"], "holds:points upwards"), (UPRIGHT, &["954.5 N"], "holds:points upwards"),
    (UPRIGHT, &["-954.5 N down"], "noted:one of them"), (LEVEL, &["-349 N right"], "holds:points to the left"), (LEVEL, &["-349 N left"], "holds"),
    (LEVEL, &["T to the right"], "wrong:whole-tension-sideways"), (LEVEL, &["T cos β to the left"], "holds:points to the left"), (LEVEL, &["T cos β to the right"], "wrong:not the way"),
    (COMPONENT, &["Wb/9.8 = 42"], "noted"), (COMPONENT, &["Wb/9.8 = 41"], "wrong"),
    // A name of her own for the other part, and sums that run on behind an =.
    (COMPONENT, &["Wbpar = Wb cos 35"], "noted"), (COMPONENT, &["Wx = 42*9.8*cos 35"], "noted"), (COMPONENT, &["Wb∥ = Wb sin 55"], "noted"), (COMPONENT, &["P = Wb cos 35"], "noted:judged when you use it"),
    (UPRIGHT, &["Hy = 412+706 = 1118 - 163 = 955 N"], "wrong:Each = says"), (UPRIGHT, &["Hy = 412+706 = 1118 N"], "wrong"),
    (DIRECTION, &["180 - atan(Hy/Hx)"], "holds"), (DIRECTION, &["-69.9"], "wrong:point another way"),
    (DIRECTION, &["69.9 above"], "holds"), (DIRECTION, &["69.9 below"], "wrong:point another way"),
    // A chain for the direction with a negative part in it; sums by a name of her own.
    (DIRECTION, &["psi = atan(Hy/Hx) = 69.9°"], "holds"), (DIRECTION, &["psi = atan(Hy/Hx) = -69.9°"], "holds"), (DIRECTION, &["psi = atan(Hy/Hx) = 59.9°"], "wrong"),
    (WEIGHT, &["x = 42*9.8", "706", "35", "80", "236", "405", "T sin 80", "x = 300"], "noted:judged when you use it"),
    (WEIGHT, &["T = 385 N", "412", "706", "35", "80", "236", "405", "T sin 80", "236*3.1+405*4=6.2*T*sin 80"], "holds:The balance holds"),
    (WEIGHT, &["T = 500 N", "go on", "412", "706", "35", "80", "236", "405", "T sin 80", "236*3.1+405*4=6.2*T*sin 80"], "holds:The balance holds"),
    (WEIGHT, &["T = 385 N", "412", "706", "35", "80", "236", "405", "T sin 80", "236*3.1+405*3.1=6.2*T*sin 80"], "wrong"),
    // The hinge.
    (LEVEL, &["Hx = T cos 25"], "holds"), (LEVEL, &["349 N left"], "holds"), (LEVEL, &["349 N to the right"], "wrong:not the way"),
    (LEVEL, &["-349"], "holds"), (LEVEL, &["348"], "rounded"), (LEVEL, &["385"], "wrong:whole-tension-sideways"), (LEVEL, &["-385"], "wrong:whole-tension-sideways"),
    (LEVEL, &["(236*3.1+405*4)/(6.2 sin 80)"], "noted:the tension"), (LEVEL, &["-T"], "wrong:whole-tension-sideways"),
    (LEVEL, &["ΣFx = T cos 25 - Hx = 0"], "noted:It holds"), (LEVEL, &["Hx + T cos 25 = 0"], "noted:It holds"),
    (LEVEL, &["T_s = T sin 25", "Hx=349", "Hy = 412+706-T_s"], "holds"),
    (UPRIGHT, &["1118 - 163 = 955"], "holds"), (UPRIGHT, &["955"], "rounded"), (UPRIGHT, &["954.9 N"], "rounded"),
    (UPRIGHT, &["ΣFy = Hy + T sin 25 - Wb - W1 = 0"], "noted:It holds"), (UPRIGHT, &["1118"], "wrong:force-forgotten"),
    (UPRIGHT, &["V = 955 N"], "rounded"), (UPRIGHT, &["945"], "wrong:slip"), (UPRIGHT, &["955 N down"], "wrong:not the way"),
    (SIZE, &["sqrt(349^2+954^2)"], "holds"), (SIZE, &["sqrt(-349^2+954^2)"], "holds"), (SIZE, &["H^2 = Hx^2+Hy^2"], "noted:It holds"), (SIZE, &["1016"], "holds"),
    (SIZE, &["H = √(349²+955²) = 1017"], "holds"), (SIZE, &["349+954"], "wrong:components-added"), (SIZE, &["1010"], "rounded"), (SIZE, &["1000"], "too-few-figures"), (SIZE, &["1e3"], "too-few-figures"),
    (DIRECTION, &["tan ψ = Hy/Hx"], "noted:It holds"), (DIRECTION, &["sin ψ = 954/1016"], "noted:It holds"),
    (DIRECTION, &["tan-1(954/349)"], "holds"), (DIRECTION, &["69.9 degrees above the horizontal"], "holds"),
    (DIRECTION, &["110"], "holds"), (DIRECTION, &["20.1"], "wrong:arctangent-inverted"), (DIRECTION, &["10"], "wrong"),
    (DIRECTION, &["atan(349/954)"], "wrong:arctangent-inverted"),
    // The component of what is unknown, in a chain; a relation for it; nothing but the unknown.
    (COMPONENT + 2, &["T sin 80 = 0.985 T"], "holds"), (COMPONENT + 2, &["T sin 80 = 0.895 T"], "wrong:not its value"),
    (COMPONENT + 2, &["T⊥/T = sin 80"], "holds"), (COMPONENT + 2, &["T⊥/T = cos 80"], "wrong:sine-cosine-exchanged"),
    (COMPONENT + 2, &["T cos 10 = T sin 80 = 0.985 T"], "holds"), (MOMENTS, &["T sin 80 = 0.985 T"], "noted:says nothing"),
    (MOMENTS, &["T sin 80 = 0.895 T"], "wrong"),
    // A factor that only changes the unit, of forces and of angles.
    (WEIGHT, &["42*9.8/1000 kN"], "holds"), (WEIGHT, &["42*9.8/1000 = 0.412 kN"], "holds"), (WEIGHT, &["mb*g/1000 kN"], "holds"),
    (WEIGHT, &["42/1000*9.8 kN"], "holds"), (WEIGHT, &["42*9.8/1000"], "wrong"), (WEIGHT, &["42*10/1000 kN"], "wrong:g = 10"),
    (COMPONENT, &["412*sin 35/1000 kN"], "holds"), (COMPONENT, &["Wb*sin(35*pi/180)"], "holds"), (COMPONENT, &["412*sin(55*pi/180)"], "wrong:complement"),
    (ANGLE, &["35*pi/180 rad"], "holds"), (ANGLE, &["35*(pi/180)"], "holds"), (ANGLE, &["0.6109 rad"], "holds"), (ANGLE, &["π/2 - 55*π/180"], "holds"),
    (ANGLE, &["55*pi/180 rad"], "noted:another angle"), (ANGLE, &["36*pi/180 rad"], "wrong"),
    // A step told by a relation with its own name in it.
    (WEIGHT, &["Wb/g = mb"], "holds"), (WEIGHT, &["Wb - 42*9.8 = 0"], "holds"), (WEIGHT, &["Wb/9.8 = 42 kg"], "holds"),
    (WEIGHT, &["Wb/9.8 = 41"], "wrong"), (WEIGHT, &["Wb*g = mb"], "wrong:divided-by-g"), (WEIGHT, &["Wb = Wb"], "circular"),
    (ANGLE, &["α + 55 = 90"], "holds"), (ANGLE, &["α + θ = 95"], "wrong"), (ANGLE, &["sin α = cos 55"], "holds"), (ANGLE, &["sin α = sin 55"], "wrong:complement"),
    (COMPONENT, &["Wb⊥/Wb = sin 35"], "holds"), (COMPONENT, &["Wb⊥/cos 35 = 412"], "wrong:sine-cosine-exchanged"),
    // True of the problem, and not what is asked; and not true.
    (MOMENTS, &["L/2 = 3.1"], "noted:It holds"), (MOMENTS, &["6.2/2 = 3.1"], "noted:It holds"), (MOMENTS, &["L/2 = 3.9"], "wrong:not equal"),
    (MOMENTS, &["α+γ = 115°"], "noted:It holds"), (MOMENTS, &["α+γ = 90°"], "wrong:not equal"), (MOMENTS, &["sin 80 = 0.985"], "noted:It holds"),
    (MOMENTS, &["Wb cos 35 = 337"], "noted:It holds"), (MOMENTS, &["mb + m1 = 114 kg"], "noted:It holds"), (MOMENTS, &["Wb+W1 = 1117"], "noted:It holds"),
    (MOMENTS, &["412+706 = 1118"], "noted:It holds"), (MOMENTS, &["412+706"], "wrong:forces-for-moments"), (MOMENTS, &["412+706 = 1218"], "wrong"),
    (MOMENTS, &["412*3.1 = 1277"], "wrong"), (MOMENTS, &["mb*3.1 + m1*4 = 418"], "wrong"), (MOMENTS, &["Wb/g = mb"], "noted:It holds"),
    (COMPONENT, &["L/2 = 3.1"], "noted:It holds"), (COMPONENT, &["Wb cos 35 = 337"], "wrong:sine-cosine-exchanged"), (COMPONENT, &["mb sin 35 = 24.1"], "wrong:mass-for-weight"),
    (WEIGHT, &["mb/g = 4.29"], "wrong:divided-by-g"), (WEIGHT, &["mb + m1 = 114"], "noted:It holds"), (PULL, &["sin 80 = 0.985"], "noted:It holds"),
    // Two statements in a line: both must hold.
    (MOMENTS, &["236*3.1 + 405*4 = T*sin 80*6.2 => T = 385"], "holds:final answer"), (MOMENTS, &["236*3.1 + 405*4 = T*sin 80*6.2 -> 385 N"], "holds"),
    (MOMENTS, &["236*3.1 + 405*4 = T*sin 80*6.2 ∴ T = 385 N"], "holds"), (MOMENTS, &["236*3.1 + 405*4 = T*sin 80*6.2, so T = 385 N"], "holds"),
    (MOMENTS, &["236*3.1 + 405*4 = T*sin 80*6.2 => 2352 = 6.11 T => T = 385 N"], "holds"), (MOMENTS, &["L/2 = 3.1, 236*3.1 + 405*4 = T*sin 80*6.2"], "holds"),
    (MOMENTS, &["236*3.1 + 405*4 = T*sin 80*6.2 => T = 425"], "wrong:What stands first holds"),
    (MOMENTS, &["236*6.2 + 405*4 = T*sin 80*6.2 => T = 385"], "wrong:own-weight-at-tip"),
    (MOMENTS, &["236*3.1 + 405*4 = T*sin 80*6.2 => 2352 = 6.31 T => T = 385 N"], "wrong:What stands first holds"),
    (WEIGHT, &["Wb = 42*9.8, g = 9.8"], "holds"), (WEIGHT, &["Wb = 42*9.8 so 412 N"], "holds"), (WEIGHT, &["Wb = 42*9.8 so 421 N"], "wrong:What stands first holds"),
    (WEIGHT, &["m1 = 42 kg so Wb = 412 N"], "wrong:m1 = 72 kg"), (WEIGHT, &["42*9.8 => 411.6 N"], "holds"),
    // Counted in centimetres or kilonewtons throughout, and not throughout.
    (MOMENTS, &["236*310 + 405*400 = T*sin 80*620"], "holds"), (MOMENTS, &["236*310 + 405*400 = T*sin 80*6.2"], "wrong"),
    (MOMENTS, &["0.236*3.1 + 0.405*4 = T*sin 80*6.2"], "holds"), (MOMENTS, &["0.236*3.1 + 405*4 = T*sin 80*6.2"], "wrong"),
    (MOMENTS, &["0.236*6.2 + 0.405*4 = T*sin 80*6.2"], "wrong"), (MOMENTS, &["236*310 + 405*400 = T*620"], "wrong"),
    (SIZE, &["√(0.349²+0.954²) = 1.02 kN"], "holds"), (SIZE, &["√(0.349²+0.954²) kN"], "holds"), (SIZE, &["√(0.349²+0.954²)"], "wrong"),
    (PULL, &["0.385"], "wrong"), (PULL, &["T = 2.352/6.11"], "wrong"),
    // Rounded once more after the value; a sum named before a value; names and titles.
    (WEIGHT, &["Wb = 412 N ≈ 410 N"], "holds"), (WEIGHT, &["Wb = 412 N ≈ 420 N"], "wrong"), (WEIGHT, &["Wb = 412 N = 410 N"], "too-few-figures"),
    (LEVEL, &["ΣFx = 0 → Hx = -349 N"], "holds"), (LEVEL, &["ΣFx = 0 → Hx = -385 N"], "wrong"),
    (MOMENTS, &["ΣM = 0"], "noted:That is the idea"), (MOMENTS, &["Mb + M1 - MT = 0"], "holds"), (MOMENTS, &["Mb + M1 + MT = 0"], "wrong:turns the same way"),
    (UPRIGHT, &["W = Wb + W1", "Hy = W - Ty"], "holds"), (UPRIGHT, &["V = Wb + W1"], "wrong:force-forgotten"),
    (WEIGHT, &["weight of the mast = 412 N"], "holds"), (WEIGHT, &["Weight of the mast: 42*9.8"], "holds"), (WEIGHT, &["weight of the mast = 42"], "wrong:mass-for-weight"),
    (WEIGHT, &["412 N, acting downwards"], "holds"), (PULL, &["tension = 385 N"], "holds"), (MOMENTS, &["236*3.1 + 405*4 = tension*sin 80*6.2"], "holds"),
    (COMPONENT, &["Wbx = 412 sin 35"], "holds"), (WEIGHT, &["mb x g"], "holds"),
    // The arm multiplied at the end, masses in the balance of forces, squares subtracted.
    (PULL, &["T = 2351*6.2*sin 80"], "wrong:arm-multiplied"), (PULL, &["T = 2351*6.2/sin 80"], "wrong:arm-multiplied"), (PULL, &["T = 2351/(6.2*sin 80)"], "holds"),
    (UPRIGHT, &["Hy = 42 + 72 - T sin 25"], "wrong:mass-in-the-force-balance"), (UPRIGHT, &["42 + 72 - 163"], "wrong"), (UPRIGHT, &["412 + 72 - T sin 25"], "wrong:mass-in-the-force-balance"),
    (UPRIGHT, &["(42 + 72)*9.8 - T sin 25"], "holds"),
    (SIZE, &["sqrt(Hy^2-Hx^2)"], "wrong:squares-subtracted"), (SIZE, &["sqrt(954^2-349^2)"], "wrong:squares-subtracted"), (SIZE, &["888"], "wrong:squares-subtracted"), (SIZE, &["sqrt(Hy^2+Hx^2)"], "holds"),
    (MOMENTS, &["412*3.1 + 706*4 = T*6.2*sin 80"], "wrong:not-resolved"),
    // True of every body.
    (MOMENTS, &["1 = 1"], "noted:says nothing"), (WEIGHT, &["1 = 1"], "noted:says nothing"), (MOMENTS, &["412 = 412"], "noted:says nothing"), (MOMENTS, &["1 = 2"], "wrong"),
    // A ratio of too few figures gives no angle; a factor outside a sine is none of its angle.
    (ANGLE, &["sin α = 0.6"], "too-few-figures"), (ANGLE, &["asin(0.6)"], "too-few-figures"), (ANGLE, &["asin(0.574)"], "holds"),
    (COMPONENT, &["412*sin 35*pi/180"], "holds:Read in the way"), (MOMENTS, &["W1*4 = 2822"], "wrong"), (PULL, &["T = 385 N ≈ 400 N"], "too-few-figures"), (SIZE, &["H = 1016 N ≈ 1000 N"], "holds"),
    (DIRECTION, &["tan ψ = Hy/Hx = 2.736"], "noted:It holds"), (DIRECTION, &["tan ψ = 954.5/348.9 = 2.736"], "noted:It holds"), (DIRECTION, &["tan ψ = Hy/Hx = 27.36"], "wrong:not its value"),
    // Near a slip that is known by its value, what follows is worked out from what she typed.
    (PULL, &["2192 N", "go on", "skip", "Hy = 1117.2 - 2192*sin 25 = 190.8 N"], "follows:line 1"), (PULL, &["2192 N", "go on", "skip", "Hy = 411.6 + 705.6 - 2192*sin 25 = 190.8 N"], "follows:line 1"), (PULL, &["2192 N", "go on", "skip", "Hy = 1117.2 - 2192*sin 25 = 198 N"], "wrong"), (PULL, &["2192 N", "go on", "skip", "Hy = 1117.2 + 2192*sin 25"], "wrong"),
    // A wrong value that she goes on with may be said again; another is judged.
    (PULL, &["400 N", "go on", "T = 400 N"], "noted:your own value from line 1"), (PULL, &["403 N", "go on", "Hx = -T cos 25", "T = 403"], "noted:your own value from line 1"), (PULL, &["403 N", "go on", "T = 413 N"], "wrong"), (PULL, &["403 N", "go on", "T = 403 = 413"], "wrong"),
    (PULL, &["403 N", "go on", "T = 403, Hx = -T cos 25"], "follows:line 1"), (PULL, &["403 N", "go on", "T = 403, Hx = -T sin 25"], "wrong"), (PULL, &["403 N", "go on", "back", "T = 403"], "wrong"), (PULL, &["403 N", "T = 403 N"], "wrong"),
    // What follows from a wrong line that still waits is told so; the line waits on.
    (PULL, &["403 N", "Hx = -403 cos 25"], "noted:from your line 1, which still waits"), (PULL, &["403 N", "Hx = -T cos 25 = -365"], "noted:still waits"), (PULL, &["403 N", "-403 cos 25"], "noted:still waits"), (PULL, &["403 N", "Hx = -403 sin 25"], "wrong"), (PULL, &["403 N", "-365"], "wrong"),
    (PULL, &["403 N", "Hx = -403 cos 25", "go on", "Hx = -403 cos 25"], "follows:line 1"), (PULL, &["403 N", "Hx = -403 cos 25", "385 N", "Hx = -403 cos 25"], "wrong"), (PULL, &["403 N", "Hx = -385 cos 25"], "holds"), (MOMENTS, &["236*3.1+405*4.4 = T*sin 80*6.2", "T = 412 N"], "noted:still waits"),
    // What is concluded from a balance of hers must follow from it.
    (WEIGHT, &["42", "go on", "706", "35", "80", "24.1", "405", "T sin 80", "24.09*3.1+405*4=T*sin 80*6.2 => T = 385"], "wrong:does not follow from it"), (WEIGHT, &["42", "go on", "706", "35", "80", "24.1", "405", "T sin 80", "24.09*3.1+405*4=T*sin 80*6.2; T = 385 N"], "wrong:does not follow from it"),
    (WEIGHT, &["42", "go on", "706", "35", "80", "24.1", "405", "T sin 80", "24.09*3.1+405*4=T*sin 80*6.2 => T = 278 N"], "follows:line"), (WEIGHT, &["42", "go on", "706", "35", "80", "24.1", "405", "T sin 80", "24.09*3.1+405*4=T*sin 80*6.2", "T = 385 N"], "holds"), (WEIGHT, &["42", "go on", "706", "35", "80", "24.1", "405", "T sin 80", "236*3.1+405*4=T*sin 80*6.2 => T = 385 N"], "holds"),
    (WEIGHT, &["42", "go on", "706", "35", "80", "24.1", "405", "T sin 80", "skip", "24.09*3.1+405*4=T*sin 80*6.2 => 385"], "wrong:does not follow from it"), (PULL, &["236*3.1+405*4=T*sin 80*6.2 => 385 N"], "holds"), (PULL, &["236*3.1+405*4=T*sin 80*6.2 => 395 N"], "wrong"),
    // A name of her own counts in the statement behind it, before what the problem calls so.
    (UPRIGHT, &["G = 114*9.8 => Hy = G - T sin 25"], "holds"), (UPRIGHT, &["G = 114*9.8; Hy = G - T sin 25", "Hy = G - 385 sin 25"], "holds"), (UPRIGHT, &["G = 42*9.8 => Hy = G - T sin 25"], "wrong"), (UPRIGHT, &["G = 114*9.8 => Hy = G + T sin 25"], "wrong"), (UPRIGHT, &["S = 412+706, V = T sin 25, Hy = S - V"], "holds"), (UPRIGHT, &["S = 412+706, V = T sin 25, Hy = S + V"], "wrong"),
    // A pull of hers below zero, put in as a number.
    (PULL, &["T = -450 N", "go on", "Hx = -(-450)*cos 25"], "follows:line 1"), (PULL, &["T = -450 N", "go on", "skip", "Hy = 412 + 706 - (-450)*sin 25 = 1308 N"], "follows:line 1"), (PULL, &["T = -450 N", "go on", "skip", "Hy = 412 + 706 + 450*sin 25"], "follows:line 1"), (PULL, &["T = -450 N", "go on", "skip", "Hy = 412 + 706 - 450*sin 25"], "wrong"), (PULL, &["T = -450 N", "go on", "Hx = -(-450)*sin 25"], "wrong"), (PULL, &["T = -450 N", "go on", "skip", "Hy = 1117.2 + 190.2"], "follows:line 1"), (PULL, &["T = -450 N", "go on", "skip", "Hy = 1117.2 - 190.2"], "wrong"),
    // A balance with a number of her own in it is solved in full, and may be said again.
    (MOMENTS, &["236*3.1+405*4.4 = T*sin 80*6.2", "go on", "T = (236*3.1+405*4.4)/(6.2*sin 80)"], "follows:line 1"), (MOMENTS, &["236*3.1+405*4.4 = T*sin 80*6.2", "go on", "T = (236*3.1+405*4.9)/(6.2*sin 80)"], "wrong"), (MOMENTS, &["236*3.1+405*4.4 = T*sin 80*6.2", "go on", "236*3.1+405*4.4 = T*sin 80*6.2"], "noted:It holds"), (MOMENTS, &["236*3.1+405*4.4 = T*sin 80*6.2", "go on", "236*3.1+405*4.9 = T*sin 80*6.2"], "wrong"),
    (MOMENTS, &["236*6.2+405*4 = T*sin 80*6.2", "T = 505 N"], "noted:still waits"), (MOMENTS, &["236*6.2+405*4 = T*sin 80*6.2", "T = 545 N"], "wrong"), (PULL, &["k = T sin 80, 2350.7 = k*6.2"], "noted:It holds"), (MOMENTS, &["k = T sin 80, 2350.7 = k*6.2"], "holds"), (MOMENTS, &["k = T cos 80, 2350.7 = k*6.2"], "wrong"),
];

#[rustfmt::skip]
const WALKWAY_ROWS: &[Row] = &[
    // About a point 3.0 m from the hinge: by hand 3588·sin 25°·0.8 − 352.8·0.9 − 803.6·1 + 235.2·1.2
    // = 374.1 = 124.7·3.
    (LAST_SIZE, &["T*sin(25)*0.8 - Wb*0.9 - W1*1 + W2*1.2 = -Hy*3"], "noted"), (LAST_SIZE, &["T*sin(25)*0.8 - Wb*0.9 - W1*1 + W2*1.2 = -Hy*3.5"], "wrong"), (LAST_SIZE, &["T*cos(25)*0.8 - Wb*0.9 - W1*1 + W2*1.2 = -Hy*3"], "wrong"), (LAST_SIZE + 1, &["T*sin(25)*0.8 - Wb*0.9 - W1*1 + W2*1.2 = -Hy*3"], "noted"),
    // The wrong angle of her own, and what follows from it, where the key goes by the given one.
    // The mass that stands for a weight is hers, though it is given too.
    (WEIGHT, &["36", "go on", "804", "235", "25", "T sin 25", "36*2.1+804*2+235*4.2=T sin 25*2.2"], "follows:line 1"),
    (ROPE_ANGLE, &["65", "go on", "T sin γ", "353*2.1+804*2+235*4.2 = T sin γ*2.2", "1673 N", "-T cos γ"], "follows:lines 1, 4"),
    (ROPE_ANGLE, &["65", "go on", "T sin γ", "353*2.1+804*2+235*4.2 = T sin γ*2.2", "1673 N", "-1673 cos γ"], "follows:lines 1, 4"),
    (ROPE_ANGLE, &["65", "go on", "skip", "skip", "skip", "skip", "Wb + W1 + W2 - T sin γ"], "follows:line 1"),
    (ROPE_ANGLE, &["65", "go on", "skip", "skip", "skip", "skip", "Wb + W1 - T sin γ"], "wrong"),
    (ROPE_ANGLE, &["65", "go on", "T sin γ", "353*2.1+804*2+235*4.2 = T sin γ*2.2", "1673 N", "-1673 cos 65"], "follows:lines 1, 4"),
    // Parts of her own by their size, with the sign that she typed or without.
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2+235*4.2=T cos 25*2.2", "1673.5", "1517 left", "684.4", "sqrt(1517^2+684.4^2)"], "follows:lines 5, 6"),
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2+235*4.2=T cos 25*2.2", "1673.5", "1517 left", "684.4", "1664", "atan(684.4/1517)"], "follows"),
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2+235*4.2=T cos 25*2.2", "1673.5", "1517 left", "684.4", "sqrt(1517^2-684.4^2)"], "wrong"),
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2+235*4.2=T cos 25*2.2", "1673.5", "1517 left", "684.4", "sqrt(2301289+468403)"], "follows"),
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2+235*4.2=T cos 25*2.2", "1673.5", "1517 left", "684.4", "H^2=1517^2+684.4^2"], "noted:It holds"),
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2+235*4.2=T cos 25*2.2", "1673.5", "1517 left", "684.4", "H^2=Hx^2+Hy^2"], "noted:It holds"),
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2+235*4.2=T cos 25*2.2", "1673.5", "1517 left", "684.4", "H^2=1517^2-684.4^2"], "wrong"),
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2+235*4.2=T cos 25*2.2", "1673.5", "1517 left", "684.4", "1664", "tan ψ = 684.4/1517"], "noted:It holds"),
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2+235*4.2=T cos 25*2.2", "1673.5", "1517 left", "684.4", "1664", "tan ψ = Hy/Hx"], "noted:It holds"),
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2+235*4.2=T cos 25*2.2", "1673.5", "1517 left", "684.4", "1664", "tan ψ = Hx/Hy"], "wrong"),
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2+235*4.2=T cos 25*2.2", "1673.5", "1517 left", "684.4", "1664", "cos ψ = 1517/1664"], "noted:It holds"),
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2+235*4.2=T cos 25*2.2", "1673.5", "1517 left", "684.4", "1664", "tan ψ = 0.451"], "noted:It holds"),
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2+235*4.2=T cos 25*2.2", "1673.5", "1517 left", "684.4", "1664", "cos ψ = 684.4/1664"], "wrong"),
    (WALKWAY_WEIGHT, &["36", "go on", "82", "go on", "24", "go on", "65", "go on", "T sin 65", "36*2.1+82*2+24*4.2=T sin 65*2.2", "170.7", "-154.7", "142-72.1"], "follows"),
    (WALKWAY_WEIGHT, &["36", "go on", "82", "go on", "24", "go on", "65", "go on", "T sin 65", "36*2.1+82*2+24*4.2=T sin 65*2.2", "170.7", "-154.7", "142+72.1"], "wrong"),
    // A value of her own that she has since put otherwise; her own numbers to the figure.
    (WALKWAY_LEVEL - 1, &["1674", "go on", "T = 3588", "-1674 cos 25"], "wrong:Since line 2, T = 3588 N counts"), (WALKWAY_LEVEL - 1, &["1674", "go on", "T = 3588", "-3588 cos 25"], "holds"),
    (WALKWAY_LEVEL - 1, &["1680", "go on", "T = 1690", "go on", "-1690 cos 25"], "follows:line 2"), (WALKWAY_LEVEL - 1, &["1680", "go on", "T = 1690", "go on", "-1690 sin 25"], "wrong"),
    (WALKWAY_LEVEL, &["-3180", "go on", "-124.7", "3182", "2.25 below"], "follows:line 1"),
    // What a right form of hers comes to counts on, though it has lost figures in a difference.
    (WALKWAY_LEVEL, &["-3250", "353+804+235-1520", "3250", "atan(128/3250)"], "holds"), (WALKWAY_LEVEL, &["-3250", "353+804+235-1520", "3250", "asin(128/3250)"], "holds"), (WALKWAY_LEVEL, &["-3250", "-128", "3250", "atan(128/3250)"], "holds"),
    (WALKWAY_LEVEL, &["-3250", "353+804+235-1520", "3250", "atan(118/3250)"], "wrong"), (WALKWAY_LEVEL, &["-3250", "353+804+235-1520", "3250", "atan(3250/128)"], "wrong"), (WALKWAY_LEVEL, &["-3250", "353+804+235-1520", "3250", "atan(128/1520)"], "wrong"),
    (WALKWAY_LEVEL, &["-3250", "-128", "back", "-125", "3250", "atan(128/3250)"], "noted:not to be seen"),
    // What is made of her own pull follows it; a line tells the values that stand in it.
    (WALKWAY_LEVEL - 1, &["1680", "go on", "-Tx"], "follows:line 1"), (WALKWAY_LEVEL - 1, &["1680", "go on", "-1523", "Wb + W1 + W2 - Tperp"], "follows:line 1"),
    (WALKWAY_LEVEL - 1, &["1680", "go on", "-T cos 25", "Wb + W1 + W2 - T sin 25", "sqrt(Hx^2+Hy^2)"], "follows:lines 2, 3"),
    // Another angle than that of the form, and one that is none of the problem.
    (WALKWAY_LEVEL, &["T cos 27"], "wrong:27° is no angle of this problem"), (WALKWAY_LEVEL, &["T sin 60"], "wrong:60° is no angle of this problem"),
    // Sine for cosine, whichever sign was typed, in a form or a number alone.
    (WALKWAY_LEVEL, &["T cos 65"], "wrong:sine-cosine-exchanged"), (WALKWAY_LEVEL, &["T cos β"], "wrong:sine-cosine-exchanged"), (WALKWAY_LEVEL, &["-T cos β"], "wrong:sine-cosine-exchanged"),
    (WALKWAY_LEVEL, &["T sin β"], "holds"), (WALKWAY_LEVEL, &["T cos γ"], "holds"), (WALKWAY_LEVEL, &["1516"], "wrong:sine-cosine-exchanged"), (WALKWAY_LEVEL, &["-1516"], "wrong:sine-cosine-exchanged"),
    // Two figures with zeros behind them, or as a power of ten.
    (LAST_SIZE, &["3300"], "too-few-figures"), (LAST_SIZE, &["3.3e3"], "too-few-figures"), (LAST_SIZE, &["3400"], "wrong"), (LAST_SIZE, &["3.4e3"], "wrong"),
    // Near by chance: another relation, which its names or numbers show.
    (LAST_SIZE, &["sqrt(3252^2-124.7^2)"], "noted:with other numbers"), (LAST_SIZE, &["sqrt(Hx^2-Hy^2)"], "wrong"),
    (UPRIGHT_OF_WALKWAY, &["-124.7 N up"], "holds:points downwards"), (UPRIGHT_OF_WALKWAY, &["124.7 N up"], "wrong:not the way"),
    (UPRIGHT_OF_WALKWAY, &["124.7 N down"], "holds"), (UPRIGHT_OF_WALKWAY, &["-124.7 N down"], "holds"),
    (LAST_SIZE + 1, &["-2.20"], "holds"), (LAST_SIZE + 1, &["180 - atan(Hy/Hx)"], "wrong:point another way"),
    (LAST_SIZE + 1, &["2.20 below"], "holds"), (LAST_SIZE + 1, &["2.20 above"], "wrong:point another way"),
    (LAST_SIZE, &["sqrt(3252^2+124.7^2)"], "holds"), (LAST_SIZE, &["sqrt(Hx^2+Hy^2)"], "holds"),
    // A name of her own whose expression does not come to the number behind it is not kept.
    (WALKWAY_LEVEL - 2, &["M = 352.8*2.1+803.6*2+235.2*4.2 = 3435.9"], "wrong:name is not kept"), (WALKWAY_LEVEL - 2, &["M = 352.8*2.1+803.6*2+235.2*4.2 = 3435.9", "2*M = 2*T*2.2*sin 25"], "not-understood"), (WALKWAY_LEVEL - 2, &["M = 352.8*2.1+803.6*2+235.2*4.2 = 3336"], "noted"), (WALKWAY_LEVEL - 2, &["M = 352.8*2.1+803.6*2+235.2*4.2 = 3340"], "noted"), (WALKWAY_LEVEL - 2, &["M = 352.8*2.1+803.6*2+235.2*4.2 = 0"], "noted"),
    (WALKWAY_LEVEL - 2, &["h = 2.2 sin 25 = 1.33"], "wrong:name is not kept"), (WALKWAY_LEVEL - 2, &["h = 2.2 sin 25 = 0.93"], "noted"), (WALKWAY_WEIGHT, &["G = 36*9.8 = 452.8 N"], "wrong:name is not kept"), (WALKWAY_WEIGHT, &["G = 36*9.8 = 352.8 N"], "holds"),
    (WALKWAY_LEVEL - 1, &["F = 3335.92/2.2/sin 25 = 3857 N"], "wrong:name is not kept"), (WALKWAY_LEVEL - 1, &["F = 3335.92/2.2/sin 25 = 3588 N"], "holds"), (UPRIGHT_OF_WALKWAY, &["G = Wb + W1 + W2 = 1491.6"], "wrong:name is not kept"), (UPRIGHT_OF_WALKWAY, &["G = Wb + W1 + W2 = 1392"], "noted"), (UPRIGHT_OF_WALKWAY, &["G = Wb + W1 + W2 = 1.39 kN"], "noted"), (LAST_SIZE, &["R = sqrt(3252^2+124.7^2) = 3524 N"], "wrong:name is not kept"), (LAST_SIZE, &["R = sqrt(3252^2+124.7^2) = 3254 N"], "holds"),
    // Every link of a relation must hold, the hinge's parts counted either way.
    (UPRIGHT_OF_WALKWAY, &["Hy + Ty = 352.8 + 803.6 + 235.2 = 1491.6"], "wrong:not its value"), (UPRIGHT_OF_WALKWAY, &["Hy + Ty = 352.8 + 803.6 + 235.2 = 1391.6"], "noted:It holds"), (UPRIGHT_OF_WALKWAY, &["Hy + Ty = 353 + 804 + 235 = 1390 N"], "noted:It holds"), (UPRIGHT_OF_WALKWAY, &["Hy + Ty = Wb + W1 + W2 = T"], "wrong:not its value"), (UPRIGHT_OF_WALKWAY, &["Hy - Wb - W1 - W2 + Ty = 0 = 1"], "wrong:not its value"), (UPRIGHT_OF_WALKWAY, &["-125 = Hy = -225"], "wrong:not its value"),
    (WALKWAY_LEVEL, &["T cos 25 = Hx = 3352"], "wrong:not its value"), (WALKWAY_LEVEL, &["T cos 25 = Hx = 3252"], "noted:It holds"), (WALKWAY_LEVEL, &["T cos 25 = -Hx = 3252"], "noted:It holds"), (WALKWAY_LEVEL, &["Tx = Hx = Ty"], "wrong:not its value"), (LAST_SIZE, &["H^2 = 3252^2+124.7^2 = 20591054"], "wrong:not its value"), (LAST_SIZE, &["H^2 = 3252^2+124.7^2 = 10591054"], "noted:It holds"), (LAST_SIZE, &["H^2 = 3252^2+124.7^2 = 1.06e7"], "noted:It holds"),
    (LAST_SIZE + 1, &["tan ψ = 124.7/3252 = 0.383"], "wrong:not its value"), (LAST_SIZE + 1, &["tan ψ = 124.7/3252 = 0.0383"], "noted"), (LAST_SIZE + 1, &["tan ψ = Hy/Hx = 0.0383"], "noted"), (LAST_SIZE + 1, &["tan ψ = 124.7/3252 = 0.383 => ψ = 2.20"], "wrong:not its value"), (LAST_SIZE + 1, &["tan ψ = 124.7/3252 = 0.0383 => ψ = 2.20"], "holds"),
    (WALKWAY_LEVEL - 1, &["T*2.2*sin 25 = 3335.92 = 3500"], "wrong:not its value"), (WALKWAY_LEVEL - 1, &["T*2.2*sin 25 = 3335.92 = 3336"], "noted:It holds"), (WALKWAY_LEVEL - 1, &["T sin 25 = 1516.3 = 1616 => T = 3588 N"], "wrong:not its value"), (WALKWAY_LEVEL - 1, &["T sin 25 = 1516.3 = 1516 => T = 3588 N"], "holds"),
    // A part of the pull told before the pull counts once that is settled.
    (WALKWAY_LEVEL - 1, &["T⊥ = 100; T = 3588 N"], "wrong"), (WALKWAY_LEVEL - 1, &["T⊥ = 1516; T = 3588 N"], "holds"), (WALKWAY_LEVEL - 1, &["Tx = 100; T = 3588 N"], "wrong"), (WALKWAY_LEVEL - 1, &["Tx = 3252; T = 3588 N"], "holds"), (WALKWAY_LEVEL - 1, &["MT = 100, T = 3588 N"], "wrong"), (WALKWAY_LEVEL - 1, &["MT = 3336 => T = 3588 N"], "holds"), (WALKWAY_LEVEL - 1, &["T⊥ = 3588; T = 3588 N"], "noted"),
    (WALKWAY_LEVEL - 2, &["T⊥ = 100; 352.8*2.1+803.6*2+235.2*4.2 = T*2.2*sin 25"], "wrong"), (WALKWAY_LEVEL - 2, &["T⊥ = 1516; 352.8*2.1+803.6*2+235.2*4.2 = T*2.2*sin 25"], "holds"), (WALKWAY_LEVEL - 2, &["T⊥ = 100"], "noted"),
    // An angle of hers that is the given one too counts as hers, by name and by number.
    (ROPE_ANGLE, &["65", "go on", "skip", "skip", "skip", "skip", "Hy = 353+804+235 - 3588 sin 65"], "follows:line 1"), (ROPE_ANGLE, &["65", "go on", "skip", "skip", "skip", "Hx = -3588 cos 65"], "follows:line 1"), (ROPE_ANGLE, &["65", "go on", "skip", "skip", "skip", "skip", "Hy = 353+804 - 3588 sin 65"], "wrong"), (ROPE_ANGLE, &["25", "skip", "skip", "skip", "skip", "Hy = 353+804+235 - 3588 sin 65"], "wrong"),
    // Two slips of hers, and her balance solved in full.
    (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2.1+235*4.2=T cos 25*2.2", "go on", "T = (353*2.1+804*2.1+235*4.2)/(2.2*cos 25)"], "follows:line 3"), (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2.1+235*4.2=T cos 25*2.2", "go on", "T = (Wb*L/2+W1*2.1+W2*L)/(dT*cos 25) = 1714 N"], "follows:line 3"), (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2.1+235*4.2=T cos 25*2.2", "go on", "T = (353*2.1+804*2.2+235*4.2)/(2.2*cos 25)"], "wrong"), (ROPE_ANGLE, &["25", "T cos 25", "go on", "353*2.1+804*2.1+235*4.2=T cos 25*2.2", "go on", "T = (353*2.1+804*2.1+235*4.2)/(2.2*cos 25) = 1814"], "wrong"),
];

/// The mast with numbers that agree: 5.6 m at 50°, so that the lever arm of its weight is
/// 2.8 m·sin 40° = 1.800 m, the distance of the dummy; the rope at 10° with the horizontal, so that
/// θ − β is α = 40°.
#[rustfmt::skip]
const ALIKE_ROWS: &[Row] = &[
    // Written to a third figure it may be the arm; else it is what is given.
    (MOMENTS, &["412*1.80+706*1.16=T*4.85"], "rounded"), (MOMENTS, &["412*1.8+706*1.16=T*4.85"], "noted:comes out right"),
    (MOMENTS, &["265*2.8+454*1.80=T*4.85"], "holds"), (MOMENTS, &["412*1.80+706*1.80=T*4.85"], "wrong"), (MOMENTS, &["265*1.80+454*2.80=T*4.85"], "wrong"),
    (ANGLE, &["50-10"], "noted:with other numbers"), (ANGLE, &["θ-β"], "wrong"), (ANGLE, &["90-50"], "holds"), (ANGLE, &["40"], "holds"),
    (ANGLE + 1, &["50+10"], "holds"), (ANGLE + 1, &["180-50-10"], "holds"), (ANGLE + 1, &["50-10"], "wrong"),
];

#[test]
fn verif_lines_get_the_verdict_of_a_teacher() {
    let mut faults = Vec::new();
    let changes = [("6.2", "5.6"), ("55", "50"), ("4.0", "1.8"), ("25", "10")];
    let alike = changes
        .iter()
        .fold(MAST.to_owned(), |text, (from, to)| text.replace(from, to));
    let walkway = WALKWAY_ROWS.iter().map(|row| (WALKWAY, row));
    let alike = ALIKE_ROWS.iter().map(|row| (alike.as_str(), row));
    let rows = ROWS.iter().map(|row| (MAST, row));
    for (problem, (step, lines, wanted)) in rows.chain(walkway).chain(alike) {
        let mut session =
            Session::start(parse_problem(problem).unwrap(), None, Words::english()).unwrap();
        for _ in 0..*step {
            session.submit("skip");
        }
        let turns: Vec<_> = lines.iter().map(|line| session.submit(line)).collect();
        let last = turns.last().unwrap();
        let (truth, detail) = wanted.split_once(':').unwrap_or((wanted, ""));
        let message = last.line.message.to_string();
        let named = last.kept.mistakes.first().is_some_and(|id| id == detail);
        let unsaid = detail.strip_prefix('!');
        let fits = detail.is_empty()
            || unsaid.is_some_and(|unsaid| !message.contains(unsaid))
            || message.contains(detail)
            || named
            || detail == "force-forgotten" && !last.kept.mistakes.is_empty();
        if last.kept.truth != truth || !fits {
            faults.push(format!(
                "{step} {lines:?}: {} {:?} {message}; wanted {wanted}",
                last.kept.truth, last.kept.mistakes
            ));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
