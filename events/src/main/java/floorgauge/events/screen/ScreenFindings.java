package floorgauge.events.screen;

import static floorgauge.events.words.Words.player;

import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Mark;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.Threshold;
import floorgauge.events.finding.Unit;
import floorgauge.events.motion.UniformClock;
import floorgauge.events.play.Play;
import floorgauge.events.standards.Setting;
import floorgauge.events.standards.Standards;
import floorgauge.events.statistics.Normal;
import floorgauge.events.view.PlayView;
import floorgauge.events.words.FindingDraft;
import floorgauge.events.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;

/** Writes screens as findings, and raises the flags: weak, missed and moving screen. */
public final class ScreenFindings {

    private static final double SEEN_CONTACT = 0.5;

    /** At which a defender comes back to his man (common practice), m/s: turns an error of distance into one of time. */
    private static final double CLOSING_SPEED = 1.5;

    /** Once the user has gone by so long ago, the screener who meets D rolls or pops: that is no screen any more. */
    private static final int GONE_TICKS = UniformClock.ticks(0.8);

    private static final int LEAD_TICKS = UniformClock.ticks(0.4);

    private final PlayView view;
    private final Play play;
    private final Standards standards;
    private final ToDoubleFunction<Screen> hurried;

    /** @param hurried probability that a screener moves because his user left too early, and not of his own fault */
    public ScreenFindings(PlayView view, ToDoubleFunction<Screen> hurried) {
        this.view = view;
        this.hurried = hurried;
        this.play = view.play();
        this.standards = view.standards();
    }

    /** The screen itself, then its flags. */
    public List<Finding> of(Screen screen) {
        List<Finding> findings = new ArrayList<>();
        findings.add(event(screen));
        without(screen).ifPresent(findings::add);
        moving(screen).ifPresent(findings::add);
        return findings;
    }

    private Finding event(Screen s) {
        FindingDraft draft = draft(FindingKind.SCREEN, s).probability(s.probability());
        s.quality().points(standards).ifPresent(p -> draft.figure(Figure.plain("quality", p, Unit.POINTS)));
        s.quality()
                .parts()
                .forEach((part, score) -> draft.figure(Figure.plain("quality: " + part.words(), score, Unit.SHARE)));
        Optional<Map<DefenceAnswer, Double>> answers = new DefenceReader(view).read(s);
        answers.ifPresent(all -> all.forEach((answer, p) ->
                draft.figure(Figure.plain("defence: " + answer.words(), Math.max(0, Math.min(1, p)), Unit.SHARE))));
        String defence = new DefenceReader(view)
                .likeliest(s)
                .map(a -> " The defence answers: " + a.words() + ".")
                .orElse("");
        return draft.sentence(eventSentence(s) + defence).build();
    }

    private String eventSentence(Screen s) {
        String contact = s.contactProbability() >= SEEN_CONTACT
                ? "makes contact with " + player(s.userDefender().trackId())
                : "stands " + Words.of(gap(s)) + " from "
                        + player(s.userDefender().trackId());
        String gained = s.separationGained().isPresent()
                ? "; " + player(s.user().trackId()) + " gains " + Words.of(separation(s))
                : "";
        String after = s.next() == NextAct.NOT_SEEN ? "" : ", then " + s.next().words();
        return capital(article(s.kind().words())) + " by " + player(s.screener().trackId()) + " for "
                + player(s.user().trackId()) + " (" + s.use().words() + ") " + contact + gained + after + ".";
    }

    /**
     * A weak screen has a quality below the standard; a missed one made no contact with a defender who ran through its reach
     * on the user's side and lost no time. One that he went under is the defence's answer.
     */
    private Optional<Finding> without(Screen s) {
        if (s.use() != ScreenUse.USED || s.separationGained().isEmpty()) {
            return Optional.empty();
        }
        double below = s.quality().points(standards).isPresent()
                ? Normal.atMost(
                        standards.of(Setting.SCREEN_WEAK_QUALITY),
                        s.quality().points(standards).getAsDouble(),
                        qualityError(s))
                : 0;
        double missing = missed(s);
        double weak = (1 - missing) * below;
        boolean missed = missing >= weak;
        double probability = s.probability() * (missing + weak);
        if (probability < standards.of(Setting.FLAG_PROBABILITY)) {
            return Optional.empty();
        }
        FindingDraft draft = draft(missed ? FindingKind.MISSED_SCREEN : FindingKind.WEAK_SCREEN, s)
                .probability(probability)
                .severity(
                        1 - s.separationGained().get().value() / standards.of(Setting.SCREEN_FULL_SEPARATION),
                        separation(s));
        return Optional.of(
                draft.sentence(withoutSentence(s, missed, probability)).build());
    }

    /** Of the parts that vary with position errors: contact as a coin of its probability, brush and effect by theirs. */
    private double qualityError(Screen s) {
        double contact = standards.of(Setting.SCREEN_WEIGHT_CONTACT)
                * Math.sqrt(s.contactProbability() * (1 - s.contactProbability()));
        QualityMeter meter = new QualityMeter(standards);
        double effect = standards.of(Setting.SCREEN_WEIGHT_EFFECT)
                * s.separationGained().map(g -> scoreError(meter::effect, g)).orElse(0.0);
        double brush = standards.of(Setting.SCREEN_WEIGHT_BRUSH) * scoreError(meter::brush, s.brush());
        double weights = s.quality().parts().keySet().stream()
                .mapToDouble(part -> standards.of(part.weight()))
                .sum();
        return 100 * Math.sqrt(contact * contact + effect * effect + brush * brush) / Math.max(1e-9, weights);
    }

    /** Error of a score that ends at 0 and at 1: past its end it does not change with what it is made of. */
    private static double scoreError(DoubleUnaryOperator score, Estimate of) {
        return Math.abs(score.applyAsDouble(of.value() + of.error()) - score.applyAsDouble(of.value() - of.error()))
                / 2;
    }

    /** That D came through the reach without contact and lost no time. */
    private double missed(Screen s) {
        double reach = standards.of(Setting.SCREEN_MISSED_REACH) - 2 * ContactMeter.BODY_RADIUS_METRES;
        return (1 - s.contactProbability()) * s.gap().probabilityAtMost(reach) * inTime(s);
    }

    /** That D was back in time, or never lost U: then his widest separation says how surely. */
    private double inTime(Screen s) {
        if (s.timeLost().isEmpty()) {
            return 0;
        }
        double error = s.separationGained().orElseThrow().error() / Math.sqrt(2);
        double lost = s.timeLost().getAsDouble();
        return lost > 0
                ? Normal.atMost(standards.of(Setting.SCREEN_MISSED_TIME), lost, error / CLOSING_SPEED)
                : Normal.atMost(
                        standards.of(Setting.SCREEN_RECOVERED_DISTANCE),
                        s.separationBefore().value()
                                + s.separationGained().get().value(),
                        error);
    }

    private String withoutSentence(Screen s, boolean missed, double probability) {
        String defender = player(s.userDefender().trackId());
        String lost = s.timeLost().isPresent()
                ? missed
                        ? "who loses no time"
                        : "who is back after " + Words.seconds(s.timeLost().getAsDouble())
                : "who is not seen to come back";
        return capital(article(s.kind().words())) + " by " + player(s.screener().trackId()) + " for "
                + player(s.user().trackId()) + (missed ? " misses " : " stays ") + Words.of(gap(s))
                + (missed ? " " : " off ")
                + (missed ? "beside " : "") + defender + ", " + lost + "; "
                + player(s.user().trackId()) + " gains " + Words.of(separation(s)) + " ("
                + Words.sure(probability) + ").";
    }

    private Optional<Finding> moving(Screen s) {
        // The fault itself takes away the marks of a screener, to stand still and wide, so half of the doubt is its
        // own.
        double probability = Math.sqrt(s.probability()) * s.movingProbability() * (1 - hurried.applyAsDouble(s));
        boolean onHisWay = s.moment() > s.pass() + GONE_TICKS;
        if (s.use() == ScreenUse.SLIPPED || onHisWay || probability < standards.of(Setting.FLAG_PROBABILITY)) {
            return Optional.empty();
        }
        double limit = standards.of(Setting.SCREEN_SET_SPEED);
        Figure speed = speed(s);
        int at = Math.min(s.moment(), s.pass());
        String words = player(s.screener().trackId()) + " moves at " + Words.of(speed)
                + " in the half second before he meets "
                + player(s.userDefender().trackId()) + " on the " + s.kind().words() + " for "
                + player(s.user().trackId()) + "; set is at most " + Words.speed(limit) + " ("
                + Words.sure(probability) + ").";
        return Optional.of(draft(FindingKind.MOVING_SCREEN, s)
                .probability(probability)
                .severity((s.speedAtContact().value() - limit) / 2, speed)
                .mark(new Mark.Path(
                        s.screener().trackId(), play.time(play.clamp(at - LEAD_TICKS)), play.time(at), speed))
                .sentence(capital(words))
                .build());
    }

    private FindingDraft draft(FindingKind kind, Screen s) {
        double t0 = play.time(s.moment());
        FindingDraft draft = new FindingDraft(kind, s.kind().words(), play.time(s.from()), play.time(s.to()))
                .role(Role.SCREENER, s.screener())
                .role(Role.USER, s.user())
                .role(Role.USER_DEFENDER, s.userDefender());
        s.screenerDefender().ifPresent(e -> draft.role(Role.SCREENER_DEFENDER, e));
        draft.figure(gap(s))
                .figure(Figure.plain("contact probability", s.contactProbability(), Unit.SHARE))
                .figure(Figure.plain("contact time", s.contactSeconds(), Unit.SECONDS))
                .figure(speed(s))
                .figure(Figure.of("brush distance", s.brush().value(), s.brush().error(), Unit.METRES))
                .mark(new Mark.Distance(
                        t0, s.screener().trackId(), s.userDefender().trackId(), gap(s)));
        s.separationGained()
                .ifPresentOrElse(
                        g -> draft.figure(separation(s))
                                .mark(new Mark.Distance(
                                        play.time(s.separationIndex()),
                                        s.user().trackId(),
                                        s.userDefender().trackId(),
                                        Figure.of(
                                                "separation",
                                                g.value() + s.separationBefore().value(),
                                                g.error(),
                                                Unit.METRES))),
                        () -> draft.notSeen("separation after the screen", "user or defender is out of sight"));
        s.timeLost()
                .ifPresentOrElse(
                        t -> draft.figure(Figure.of("time lost", t, 0.04, Unit.SECONDS)),
                        () -> draft.notSeen("time lost by the defender", "he is not seen to come back within 3 s"));
        for (QualityPart part : QualityPart.values()) {
            if (!s.quality().parts().containsKey(part)) {
                draft.notSeen("screen " + part.words(), why(part));
            }
        }
        if (!view.control().ballSeen()) {
            draft.notSeen("ball", "the ball was not tracked; whether the user had it is inferred");
        }
        int before = play.clamp(Math.min(s.moment(), s.pass()) - LEAD_TICKS);
        int after = Math.max(s.separationIndex(), play.clamp(s.moment() + LEAD_TICKS));
        return draft.frame(play.time(before), "screener comes to set")
                .frame(t0, "screener and defender nearest")
                .frame(play.time(after), "widest separation after it")
                .tick(play.time(before), 0.04, "set")
                .tick(t0, 0.04, "screen")
                .tick(play.time(s.pass()), 0.04, "user passes")
                .tick(play.time(after), 0.04, "widest");
    }

    private static String why(QualityPart part) {
        return switch (part) {
            case BASE -> "the screener's ankles or shoulders were not seen";
            case ANGLE -> "the screener's facing was not seen, or the defender stood still";
            case EFFECT -> "user or defender is out of sight after the screen";
            default -> "it was hidden";
        };
    }

    private Figure gap(Screen s) {
        return Figure.of("gap", s.gap().value(), s.gap().error(), Unit.METRES)
                .against(new Threshold(
                        Setting.SCREEN_CONTACT_GAP.key(),
                        standards.of(Setting.SCREEN_CONTACT_GAP),
                        Threshold.Side.AT_MOST));
    }

    private Figure separation(Screen s) {
        Estimate gained = s.separationGained().orElseThrow();
        return Figure.of("separation gained", gained.value(), gained.error(), Unit.METRES);
    }

    private Figure speed(Screen s) {
        return Figure.of(
                        "screener speed",
                        s.speedAtContact().value(),
                        s.speedAtContact().error(),
                        Unit.METRES_PER_SECOND)
                .against(new Threshold(
                        Setting.SCREEN_SET_SPEED.key(),
                        standards.of(Setting.SCREEN_SET_SPEED),
                        Threshold.Side.AT_MOST));
    }

    private static String article(String noun) {
        return ("aeiou".indexOf(noun.charAt(0)) >= 0 ? "an " : "a ") + noun;
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
