//! The engine's cycle as a strip: a row a cylinder, the events on it.

use quietpin_core::report::{Cycle, CycleCylinder, CycleEvent, Outcome};
use yew::prelude::*;

use super::{at, whole};

const WIDTH: f64 = 340.0;
const LEFT: f64 = 30.0;
const RIGHT: f64 = 12.0;
const TOP: f64 = 22.0;
const ROW: f64 = 26.0;

/// The cycle, a row a cylinder.
pub(crate) fn cycle_view(cycle: &Cycle) -> Html {
    #[expect(clippy::cast_precision_loss, reason = "at most some tens of cylinders")]
    let height = TOP + ROW * cycle.cylinders.len() as f64 + 8.0;
    html! {
        <figure class="picture cycle">
            <svg viewBox={format!("0 0 {} {}", whole(WIDTH), whole(height))} role="img" aria-label={cycle.caption.text.clone()}>
                { grid(cycle.cycle_deg, height) }
                { for cycle.cylinders.iter().enumerate().map(|(row, it)| cylinder(cycle, row, it)) }
            </svg>
            <figcaption>
                { &cycle.caption.text }
                <ul class="key">
                    <li><svg viewBox="0 0 16 16" aria-hidden="true"><circle class="fires" cx="8" cy="8" r="6" /></svg>{ "fires" }</li>
                    if has(cycle, Outcome::Wasted) {
                        <li><svg viewBox="0 0 16 16" aria-hidden="true"><circle class="wasted" cx="8" cy="8" r="5" /></svg>{ "without effect" }</li>
                    }
                    if has(cycle, Outcome::Misplaced) {
                        <li><svg viewBox="0 0 16 16" aria-hidden="true"><path class="misplaced" d="M3 3 13 13M13 3 3 13" /></svg>{ "in the wrong place" }</li>
                    }
                </ul>
            </figcaption>
        </figure>
    }
}

fn has(cycle: &Cycle, outcome: Outcome) -> bool {
    cycle.events.iter().any(|it| it.outcome == outcome)
}

fn x_of(angle_deg: f64, cycle_deg: f64) -> f64 {
    LEFT + (WIDTH - LEFT - RIGHT) * angle_deg / cycle_deg
}

fn grid(cycle_deg: f64, height: f64) -> Html {
    let quarter = cycle_deg / 4.0;
    let line = |step: f64| {
        let angle = quarter * step;
        let x = at(x_of(angle, cycle_deg));
        html! {
            <g>
                <line class="grid" x1={x.clone()} x2={x.clone()} y1={at(TOP - 6.0)} y2={at(height - 6.0)} />
                <text class="scale" x={x} y="11" text-anchor="middle">{ format!("{}°", whole(angle)) }</text>
            </g>
        }
    };
    html! { { for [0.0, 1.0, 2.0, 3.0, 4.0].map(line) } }
}

/// The row of a cylinder: its own firing place as a tick, its events.
fn cylinder(cycle: &Cycle, row: usize, it: &CycleCylinder) -> Html {
    #[expect(clippy::cast_precision_loss, reason = "at most some tens of cylinders")]
    let y = TOP + ROW * row as f64 + ROW / 2.0;
    let own = x_of(it.angle_deg, cycle.cycle_deg);
    let events = cycle.events.iter().filter(|event| event.cylinder == it.cylinder);
    html! {
        <g>
            <text class="name" x="4" y={at(y + 5.0)}>{ it.cylinder }</text>
            <line class="row" x1={at(LEFT)} x2={at(WIDTH - RIGHT)} y1={at(y)} y2={at(y)} />
            <line class="own" x1={at(own)} x2={at(own)} y1={at(y - 11.0)} y2={at(y + 11.0)} />
            { for events.map(|event| mark(cycle, event, y)) }
        </g>
    }
}

fn mark(cycle: &Cycle, event: &CycleEvent, y: f64) -> Html {
    let x = x_of(event.angle_deg, cycle.cycle_deg);
    let label =
        html! { <text class="channel" x={at(x + 9.0)} y={at(y - 3.0)}>{ event.channel }</text> };
    let shape = match event.outcome {
        Outcome::Fires => html! { <circle class="fires" cx={at(x)} cy={at(y)} r="6" /> },
        Outcome::Wasted => html! { <circle class="wasted" cx={at(x)} cy={at(y)} r="5" /> },
        Outcome::Misplaced => {
            let (l, r, t, b) = (at(x - 6.0), at(x + 6.0), at(y - 6.0), at(y + 6.0));
            html! { <path class="misplaced" d={format!("M{l} {t} {r} {b}M{r} {t} {l} {b}")} /> }
        }
    };
    html! { <g>{ shape }{ label }</g> }
}
