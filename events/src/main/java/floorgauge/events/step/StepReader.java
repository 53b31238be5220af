package floorgauge.events.step;

import floorgauge.court.floor.FloorPoint;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Reads the steps of a possession: ways from where players move, cut where they gain or lose the ball and where they set a
 * screen; passes, handoffs, screens and the shot from the findings.
 */
public final class StepReader {

    private static final double MOVING_SPEED = 0.7;
    private static final double PAUSE_SECONDS = 0.25;
    private static final double USES_SECONDS = 0.45;
    private static final double LEAST_WAY_METRES = 0.9;
    private static final double LEAST_PIECE_METRES = 0.6;
    private static final double LEAST_PIECE_SECONDS = 0.25;
    private static final double LEAST_USE_METRES = 1.2;
    private static final double LEAST_CUT_METRES = 1.9;

    /** A dribble or two on the spot, or the step into a shot, is no dribble that a coach would draw. */
    private static final double LEAST_DRIBBLE_METRES = 1.4;

    private static final double HAS_BALL = 0.5;
    private static final double SCREEN_WAITS_SECONDS = 3.0;
    private static final double HANDOFF_SECONDS = 1.2;

    private final PossessionFindings possession;
    private final Map<Integer, SmoothTrail> trails = new TreeMap<>();
    private final BallHolders ball;
    private final List<Screen> screens;

    /** A screen as the steps need it. */
    private record Screen(int screener, int user, OptionalInt defender, double seconds, String label) {}

    public StepReader(PossessionFindings possession) {
        this.possession = possession;
        possession.trails().stream()
                .filter(t -> !t.points().isEmpty())
                .forEach(t -> trails.put(t.trackId(), SmoothTrail.of(t)));
        this.ball = new BallHolders(possession);
        this.screens = possession.findings().stream()
                .filter(f -> f.kind() == FindingKind.SCREEN)
                .filter(f -> f.holder(Role.SCREENER).isPresent()
                        && f.holder(Role.USER).isPresent())
                .map(f -> new Screen(
                        f.holder(Role.SCREENER).getAsInt(),
                        f.holder(Role.USER).getAsInt(),
                        f.holder(Role.USER_DEFENDER),
                        tick(f, "screen"),
                        f.label()))
                .filter(s -> !isHandoff(s))
                .toList();
    }

    /** Who hands the ball over is in the way of the receiver's defender by it; the handoff's own mark says so. */
    private boolean isHandoff(Screen screen) {
        return ball.events().stream()
                .anyMatch(e -> e.kind() == FindingKind.HANDOFF
                        && e.holder(Role.PASSER).orElse(-1) == screen.screener()
                        && e.holder(Role.RECEIVER).orElse(-1) == screen.user()
                        && Math.abs(e.fromSeconds() - screen.seconds()) < HANDOFF_SECONDS);
    }

    public Map<Integer, SmoothTrail> trails() {
        return trails;
    }

    private static double tick(Finding finding, String words) {
        return finding.ticks().stream()
                .filter(t -> t.words().equals(words))
                .mapToDouble(t -> t.timeSeconds())
                .findFirst()
                .orElse((finding.fromSeconds() + finding.toSeconds()) / 2);
    }

    /** In order of start. */
    public List<Step> read() {
        List<Step> steps = new ArrayList<>();
        for (SmoothTrail trail : trails.values()) {
            if (trail.attacking()) {
                ways(trail, steps);
            }
        }
        screens.stream()
                .filter(s -> steps.stream().noneMatch(step -> isOf(step, s)))
                .forEach(s -> standing(s, steps));
        ball.events().forEach(e -> ball(e).ifPresent(steps::add));
        steps.sort(Comparator.comparingDouble(Step::fromSeconds)
                .thenComparing(Step::kind)
                .thenComparingInt(Step::player));
        return steps;
    }

    private static boolean isOf(Step step, Screen screen) {
        return step.kind() == StepKind.SCREEN
                && step.player() == screen.screener()
                && step.toSeconds() <= screen.seconds() + LEAST_PIECE_SECONDS
                && screen.seconds() - step.toSeconds() <= SCREEN_WAITS_SECONDS;
    }

    private void ways(SmoothTrail trail, List<Step> steps) {
        TreeSet<Double> cuts = cutTimes(trail.trackId());
        double end = lastTime();
        for (double[] span : movingSpans(trail, end)) {
            if (trail.reach(span[0], span[1]) < LEAST_WAY_METRES) {
                continue;
            }
            double from = span[0];
            for (double cut : cuts.subSet(span[0] + LEAST_PIECE_SECONDS, span[1] - LEAST_PIECE_SECONDS)) {
                if (cut - from >= LEAST_PIECE_SECONDS) {
                    piece(trail, from, cut, steps);
                    from = cut;
                }
            }
            piece(trail, from, span[1], steps);
        }
    }

    /** After the shot or the turnover nobody's way belongs to the possession. */
    private double lastTime() {
        return ball.events().stream()
                .filter(e -> e.kind() == FindingKind.SHOT || e.kind() == FindingKind.TURNOVER)
                .mapToDouble(Finding::fromSeconds)
                .max()
                .orElse(possession.possession().toSeconds());
    }

    /** When the player gains or loses the ball, and when his screens are used. */
    private TreeSet<Double> cutTimes(int trackId) {
        TreeSet<Double> cuts = new TreeSet<>();
        for (BallHolders.Span span : ball.spansOf(trackId)) {
            cuts.add(span.fromSeconds());
            cuts.add(span.toSeconds());
        }
        screens.stream().filter(s -> s.screener() == trackId).forEach(s -> cuts.add(s.seconds()));
        return cuts;
    }

    /** Spans in which a player moves, short pauses bridged. */
    private List<double[]> movingSpans(SmoothTrail trail, double end) {
        List<double[]> spans = new ArrayList<>();
        double from = Double.NaN;
        for (int i = 0; i < trail.size() && trail.time(i) <= end; i++) {
            boolean moves = trail.speed(i) > MOVING_SPEED;
            if (moves && Double.isNaN(from)) {
                from = trail.time(i);
            }
            boolean stops = !moves || i + 1 == trail.size() || trail.time(i + 1) > end;
            if (stops && !Double.isNaN(from)) {
                boolean bridged = !spans.isEmpty() && from - spans.get(spans.size() - 1)[1] < PAUSE_SECONDS;
                if (bridged) {
                    spans.get(spans.size() - 1)[1] = trail.time(i);
                } else {
                    spans.add(new double[] {from, trail.time(i)});
                }
                from = Double.NaN;
            }
        }
        return spans;
    }

    private void piece(SmoothTrail trail, double from, double to, List<Step> steps) {
        double reach = trail.reach(from, to);
        double away = trail.at(from).distanceTo(trail.at(to));
        if (reach < LEAST_PIECE_METRES) {
            return;
        }
        int id = trail.trackId();
        List<FloorPoint> way = trail.between(from, to);
        Optional<Screen> screen = screens.stream()
                .filter(s -> s.screener() == id)
                .filter(s -> s.seconds() >= to - LEAST_PIECE_SECONDS && s.seconds() - to <= SCREEN_WAITS_SECONDS)
                .filter(s -> movesLittle(trail, to, s.seconds()))
                .min(Comparator.comparingDouble(Screen::seconds));
        if (ball.share(id, from, to) > HAS_BALL) {
            if (reach < LEAST_DRIBBLE_METRES) {
                return;
            }
            steps.add(step(StepKind.DRIBBLE, id, OptionalInt.empty(), from, to, way, Optional.empty(), ""));
        } else if (screen.isPresent()) {
            Screen s = screen.get();
            steps.add(step(StepKind.SCREEN, id, OptionalInt.of(s.user()), from, to, way, defender(s), s.label()));
        } else {
            boolean uses = screens.stream()
                    .anyMatch(s ->
                            s.user() == id && s.seconds() >= from - USES_SECONDS && s.seconds() <= to + USES_SECONDS);
            if (away < LEAST_WAY_METRES) {
                // Out and back again is a stir on the spot.
                return;
            }
            StepKind kind =
                    (uses && away >= LEAST_USE_METRES) || away >= LEAST_CUT_METRES ? StepKind.CUT : StepKind.SHIFT;
            steps.add(step(kind, id, OptionalInt.empty(), from, to, way, Optional.empty(), ""));
        }
    }

    private static boolean movesLittle(SmoothTrail trail, double from, double to) {
        return to <= from || trail.reach(from, to) < LEAST_WAY_METRES;
    }

    private static Step step(
            StepKind kind,
            int id,
            OptionalInt other,
            double from,
            double to,
            List<FloorPoint> way,
            Optional<FloorPoint> target,
            String label) {
        return new Step(kind, id, other, from, to, way, way.get(way.size() - 1), target, label);
    }

    private Optional<FloorPoint> defender(Screen s) {
        return s.defender().isPresent() && trails.containsKey(s.defender().getAsInt())
                ? Optional.of(trails.get(s.defender().getAsInt()).at(s.seconds()))
                : Optional.empty();
    }

    /** A screen by a player who was there already. */
    private void standing(Screen s, List<Step> steps) {
        SmoothTrail trail = trails.get(s.screener());
        if (trail != null) {
            double from = Math.max(trail.first(), s.seconds() - USES_SECONDS);
            steps.add(new Step(
                    StepKind.SCREEN,
                    s.screener(),
                    OptionalInt.of(s.user()),
                    Math.min(from, s.seconds()),
                    s.seconds(),
                    List.of(),
                    trail.at(s.seconds()),
                    defender(s),
                    s.label()));
        }
    }

    private Optional<Step> ball(Finding event) {
        boolean shot = event.kind() == FindingKind.SHOT;
        OptionalInt from = event.holder(shot ? Role.SHOOTER : Role.PASSER);
        boolean lost = event.kind() == FindingKind.TURNOVER;
        OptionalInt to = event.holder(lost ? Role.DEFENDER : Role.RECEIVER);
        boolean known = from.isPresent() && trails.containsKey(from.getAsInt());
        if (!known) {
            return Optional.empty();
        }
        FloorPoint place = trails.get(from.getAsInt()).at(event.fromSeconds());
        if (shot) {
            return Optional.of(new Step(
                    StepKind.SHOT,
                    from.getAsInt(),
                    OptionalInt.empty(),
                    event.fromSeconds(),
                    event.fromSeconds(),
                    List.of(),
                    place,
                    Optional.empty(),
                    ""));
        }
        if (to.isEmpty() || !trails.containsKey(to.getAsInt())) {
            return Optional.empty();
        }
        return Optional.of(new Step(
                lost ? StepKind.TURNOVER : event.kind() == FindingKind.PASS ? StepKind.PASS : StepKind.HANDOFF,
                from.getAsInt(),
                to,
                event.fromSeconds(),
                event.toSeconds(),
                List.of(),
                place,
                Optional.of(trails.get(to.getAsInt()).at(event.toSeconds())),
                ""));
    }
}
