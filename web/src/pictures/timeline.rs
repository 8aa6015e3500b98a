//! Speed against time, the two thresholds, and when the relay's contact is closed.

use quietpin_core::report::Timeline;
use yew::prelude::*;

use super::{at, whole};

const WIDTH: f64 = 340.0;
const LEFT: f64 = 34.0;
const RIGHT: f64 = 8.0;
const TOP: f64 = 10.0;
const PLOT: f64 = 130.0;
const BAR: f64 = 14.0;

struct Scale {
    from_s: f64,
    to_s: f64,
    most_rpm: f64,
}

impl Scale {
    fn of(timeline: &Timeline) -> Self {
        let times = || timeline.speed.iter().chain(&timeline.measured).map(|(t, _)| *t);
        let speeds = timeline.speed.iter().chain(&timeline.measured).map(|(_, n)| *n);
        let most = speeds.fold(timeline.threshold_rpm.max(timeline.release_rpm), f64::max).max(1.0);
        let (from_s, to_s) =
            (times().fold(f64::INFINITY, f64::min), times().fold(f64::NEG_INFINITY, f64::max));
        let (from_s, to_s) = if from_s < to_s { (from_s, to_s) } else { (0.0, 1.0) };
        Self { from_s, to_s, most_rpm: round_up(most * 1.05) }
    }
    fn x(&self, t: f64) -> f64 {
        let share = ((t - self.from_s) / (self.to_s - self.from_s)).clamp(0.0, 1.0);
        LEFT + (WIDTH - LEFT - RIGHT) * share
    }
    fn y(&self, rpm: f64) -> f64 {
        TOP + PLOT * (1.0 - (rpm / self.most_rpm).clamp(0.0, 1.0))
    }
}

/// A round number at or above: 1, 2 or 5 times a power of ten.
fn round_up(number: f64) -> f64 {
    let mut step = 1.0;
    loop {
        for factor in [1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0] {
            if step * factor >= number {
                return step * factor;
            }
        }
        if step > 1e9 {
            return number;
        }
        step *= 10.0;
    }
}

/// Speed against time, and the relay below it.
pub(crate) fn timeline_view(it: &Timeline) -> Html {
    let scale = Scale::of(it);
    let bar = TOP + PLOT + 26.0;
    #[expect(clippy::cast_precision_loss, reason = "a handful of marks")]
    let height = bar + BAR + 10.0 + 15.0 * it.marks.len() as f64;
    html! {
        <figure class="picture timeline">
            <svg viewBox={format!("0 0 {} {}", whole(WIDTH), whole(height))} role="img" aria-label={it.caption.text.clone()}>
                { axes(&scale) }
                <polyline class="speed" points={points(&scale, &it.speed)} />
                <polyline class="measured" points={points(&scale, &it.measured)} />
                { level(&scale, it.threshold_rpm, "on", "threshold") }
                { level(&scale, it.release_rpm, "off", "release") }
                { relay(&scale, it, bar) }
                { for it.marks.iter().enumerate().map(|(n, (t, said))| mark(&scale, n, *t, &said.text, bar)) }
            </svg>
            <figcaption>
                { &it.caption.text }
                <ul class="key">
                    <li><svg viewBox="0 0 24 8" aria-hidden="true"><path class="speed" d="M0 4H24" /></svg>{ "true speed" }</li>
                    <li><svg viewBox="0 0 24 8" aria-hidden="true"><path class="measured" d="M0 4H24" /></svg>{ "as measured" }</li>
                </ul>
            </figcaption>
        </figure>
    }
}

fn points(scale: &Scale, curve: &[(f64, f64)]) -> String {
    let points: Vec<_> =
        curve.iter().map(|(t, n)| format!("{},{}", at(scale.x(*t)), at(scale.y(*n)))).collect();
    points.join(" ")
}

fn axes(scale: &Scale) -> Html {
    let speed = |share: f64| {
        let rpm = scale.most_rpm * share;
        let y = scale.y(rpm);
        html! {
            <g>
                <line class="grid" x1={at(LEFT)} x2={at(WIDTH - RIGHT)} y1={at(y)} y2={at(y)} />
                <text class="scale" x={at(LEFT - 4.0)} y={at(y + 4.0)} text-anchor="end">{ whole(rpm) }</text>
            </g>
        }
    };
    let time = |share: f64| {
        let t = scale.from_s + (scale.to_s - scale.from_s) * share;
        let end = if share > 0.9 { "end" } else { "middle" };
        html! { <text class="scale" x={at(scale.x(t))} y={at(TOP + PLOT + 14.0)} text-anchor={end}>{ format!("{} s", at(t)) }</text> }
    };
    html! { <>{ for [0.0, 0.5, 1.0].map(speed) }{ for [0.0, 0.5, 1.0].map(time) }</> }
}

fn level(scale: &Scale, rpm: f64, class: &'static str, name: &'static str) -> Html {
    let y = scale.y(rpm);
    html! {
        <g>
            <line class={classes!("level", class)} x1={at(LEFT)} x2={at(WIDTH - RIGHT)} y1={at(y)} y2={at(y)} />
            <text class="scale" x={at(WIDTH - RIGHT)} y={at(y - 3.0)} text-anchor="end">{ format!("{name} {} rpm", whole(rpm)) }</text>
        </g>
    }
}

fn relay(scale: &Scale, it: &Timeline, y: f64) -> Html {
    html! {
        <g>
            <line class="row" x1={at(LEFT)} x2={at(WIDTH - RIGHT)} y1={at(y + BAR)} y2={at(y + BAR)} />
            <text class="scale" x="2" y={at(y + 11.0)}>{ "relay" }</text>
            { for it.closed.iter().map(|(from, to)| {
                let (x, end) = (scale.x(*from), scale.x(*to));
                html! { <rect class="closed" x={at(x)} width={at((end - x).max(1.0))} y={at(y)} height={at(BAR)} /> }
            }) }
        </g>
    }
}

fn mark(scale: &Scale, n: usize, t: f64, said: &str, bar: f64) -> Html {
    let x = scale.x(t);
    #[expect(clippy::cast_precision_loss, reason = "a handful of marks")]
    let y = bar + BAR + 14.0 + 15.0 * n as f64;
    let (anchor, gap) = if x > WIDTH * 0.55 { ("end", -4.0) } else { ("start", 4.0) };
    html! {
        <g>
            <line class="mark" x1={at(x)} x2={at(x)} y1={at(TOP)} y2={at(y)} />
            <text class="said" x={at(x + gap)} y={at(y)} text-anchor={anchor}>{ said }</text>
        </g>
    }
}
