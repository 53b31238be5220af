package floorgauge.events.script;

import floorgauge.court.rules.RuleSet;
import floorgauge.events.finding.Possession;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.ScriptReading;
import floorgauge.events.standards.Standards;
import floorgauge.events.step.SmoothTrail;
import floorgauge.events.step.Spots;
import floorgauge.events.step.Step;
import floorgauge.events.step.StepReader;
import floorgauge.events.words.Words;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Holds possessions against the scripts that a team may have meant to run. */
public final class ScriptReader {

    /** At this share of all that a script's steps could cost, it is as likely as not that it was meant. */
    private static final double EVEN_SHARE = 0.5;

    private static final double SHARE_SCALE = 0.08;

    /** Between two scripts, this much of cost makes one e times as likely. */
    private static final double COST_SCALE = 0.3;

    private final List<ScriptWays> scripts;
    private final RuleSet rules;
    private final Standards standards;

    /**
     * @param scripts what the team may have meant, one at least
     * @param rules the court
     * @param standards what screens, cuts and passes are held to
     */
    public ScriptReader(List<Script> scripts, RuleSet rules, Standards standards) {
        this.scripts = scripts.stream().map(ScriptWays::of).toList();
        this.rules = rules;
        this.standards = standards;
    }

    /** Says with which probability all identities of these tracks are sound in a span of time. */
    @FunctionalInterface
    public interface Identities {
        double sound(List<Integer> trackIds, double fromSeconds, double toSeconds);
    }

    /** The script that the possession resembles most; empty where no script has as few roles as there are attackers. */
    public Optional<ScriptReading> read(PossessionFindings possession, Identities identities) {
        StepReader reader = new StepReader(possession);
        Map<Integer, SmoothTrail> trails = reader.trails();
        List<Act> acts = Act.of(reader.read());
        Spots spots = new Spots(rules, possession.possession().end());
        List<SmoothTrail> attackers =
                trails.values().stream().filter(SmoothTrail::attacking).toList();
        Nearness nearness = new Nearness(trails);
        boolean ballSeen = possession.possession().ballSeen();
        List<Alignment> alignments = scripts.stream()
                .map(s -> new RoleSearch(s, acts, attackers, spots, ballSeen, nearness).search())
                .flatMap(Optional::stream)
                .sorted(Comparator.comparingDouble(Alignment::cost))
                .toList();
        if (alignments.isEmpty()) {
            return Optional.empty();
        }
        Alignment best = alignments.get(0);
        StepCosts costs = new StepCosts(spots, best.mirrored(), ballSeen, nearness);
        double rivals = alignments.stream()
                .mapToDouble(a -> Math.exp((best.cost() - a.cost()) / COST_SCALE))
                .sum();
        double meant = logistic((EVEN_SHARE - share(best, costs)) / SHARE_SCALE) / rivals;
        Guards guards =
                new Guards(trails.values(), rules.rim(possession.possession().end()));
        StepJudge judge =
                new StepJudge(possession, trails, guards, standards, best, i -> misplaced(best, acts, costs, i));
        List<Verdict> verdicts = new ArrayList<>();
        for (int i = 0; i < best.steps().size(); i++) {
            verdicts.add(judge.judge(i));
        }
        return Optional.of(reading(best, meant, verdicts, possession.possession(), identities));
    }

    private static double logistic(double x) {
        return 1 / (1 + Math.exp(-x));
    }

    private static double share(Alignment alignment, StepCosts costs) {
        double most = alignment.steps().stream().mapToDouble(costs::leftOut).sum();
        return most > 0 ? alignment.cost() / most : 1;
    }

    /** Whether a step that is missing was done at another place in the order, by who should. */
    private static boolean misplaced(Alignment alignment, List<Act> acts, StepCosts costs, int index) {
        return acts.stream()
                .filter(a -> alignment.acts().stream().noneMatch(taken -> taken.isPresent() && taken.get() == a))
                .anyMatch(a -> costs.match(alignment.steps().get(index), a, alignment.holders()) < 0.3);
    }

    private ScriptReading reading(
            Alignment alignment, double meant, List<Verdict> verdicts, Possession possession, Identities identities) {
        OptionalInt broken = OptionalInt.empty();
        double before = 1;
        for (int i = 0; i < verdicts.size() && broken.isEmpty(); i++) {
            if (verdicts.get(i).isBroken()) {
                broken = OptionalInt.of(i);
            } else {
                before *= 1 - verdicts.get(i).brokenProbability();
            }
        }
        List<Integer> players = alignment.script().roles().stream()
                .map(alignment.holders()::get)
                .toList();
        double sound = identities.sound(players, possession.fromSeconds(), possession.toSeconds());
        double probability = meant * sound;
        double breakdown = broken.isPresent()
                ? probability * before * verdicts.get(broken.getAsInt()).brokenProbability()
                : 0;
        List<ScriptReading.StepReading> steps = new ArrayList<>();
        for (int i = 0; i < verdicts.size(); i++) {
            steps.add(step(alignment, verdicts.get(i), i));
        }
        return new ScriptReading(
                alignment.script().name(),
                probability,
                alignment.mirrored(),
                alignment.script().roles().stream()
                        .map(r -> new ScriptReading.RolePlayer(
                                r, alignment.holders().get(r)))
                        .toList(),
                steps,
                broken,
                breakdown,
                sentence(alignment, verdicts, broken));
    }

    private static ScriptReading.StepReading step(Alignment alignment, Verdict verdict, int index) {
        Optional<Step> seen = alignment.acts().get(index).map(Act::step);
        return new ScriptReading.StepReading(
                alignment.steps().get(index).words(),
                verdict.state(),
                seen.map(Step::fromSeconds).orElse(Double.NaN),
                seen.map(Step::toSeconds).orElse(Double.NaN),
                verdict.brokenProbability(),
                verdict.why());
    }

    private static String sentence(Alignment alignment, List<Verdict> verdicts, OptionalInt broken) {
        String name = capital(alignment.script().name());
        if (broken.isEmpty()) {
            boolean unseen = verdicts.stream().anyMatch(v -> v.state() == ScriptReading.State.NOT_SEEN);
            return unseen
                    ? name + ": every step that could be seen was done; those with the ball were not seen."
                    : name + ": every step was done as the script has it.";
        }
        int i = broken.getAsInt();
        ScriptStep step = alignment.steps().get(i);
        return name + " breaks at step " + (i + 1) + ", \"" + step.words() + "\": "
                + Words.player(alignment.holders().get(step.who())) + " "
                + verdicts.get(i).why() + ".";
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
