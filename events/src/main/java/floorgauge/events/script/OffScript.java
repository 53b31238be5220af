package floorgauge.events.script;

import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.KeyFrame;
import floorgauge.events.finding.Possession;
import floorgauge.events.finding.Role;
import floorgauge.events.finding.RoleHolder;
import floorgauge.events.finding.ScriptReading;
import floorgauge.events.finding.Severity;
import floorgauge.events.finding.Tick;
import floorgauge.events.finding.Unit;
import floorgauge.events.words.Words;
import java.util.List;
import java.util.Optional;

/** Writes the first broken step of a script as a finding. */
public final class OffScript {

    private static final double STEP_TIME_ERROR_SECONDS = 0.1;

    private OffScript() {}

    /**
     * The flag for a reading whose script broke.
     *
     * @param leastProbability a flag is raised from this probability on
     * @return empty where all steps were done, or the probability is less
     */
    public static Optional<Finding> of(ScriptReading reading, Possession possession, double leastProbability) {
        if (reading.breakdown().isEmpty() || reading.breakdownProbability() < leastProbability) {
            return Optional.empty();
        }
        int index = reading.breakdown().getAsInt();
        ScriptReading.StepReading step = reading.steps().get(index);
        double from = Double.isNaN(step.fromSeconds()) ? before(reading, index, possession) : step.fromSeconds();
        double to =
                Math.max(from, Double.isNaN(step.toSeconds()) ? after(reading, index, possession) : step.toSeconds());
        int left = reading.steps().size() - index - 1;
        Figure cost = Figure.plain("steps after it", left, Unit.COUNT);
        return Optional.of(new Finding(
                FindingKind.OFF_SCRIPT,
                reading.script() + ", step " + (index + 1) + " " + step.state().words(),
                from,
                to,
                List.of(new RoleHolder(Role.ATTACKER, player(reading, step))),
                List.of(
                        Figure.plain("step of the script", index + 1, Unit.COUNT),
                        Figure.plain("sure that the script was run", reading.probability(), Unit.SHARE)),
                reading.breakdownProbability(),
                Optional.of(new Severity((left + 1.0) / reading.steps().size(), cost)),
                sentence(reading),
                List.of(
                        new KeyFrame(from, "the step begins"),
                        new KeyFrame((from + to) / 2, step.words()),
                        new KeyFrame(to, "the step ends")),
                List.of(new Tick(from, STEP_TIME_ERROR_SECONDS, "step begins")),
                List.of(),
                List.of()));
    }

    private static String sentence(ScriptReading reading) {
        String plain = reading.sentence();
        return plain.substring(0, plain.length() - 1) + " (" + Words.sure(reading.breakdownProbability()) + ").";
    }

    /** The first word of a step is the role that does it. */
    private static int player(ScriptReading reading, ScriptReading.StepReading step) {
        String role = step.words().split(" ", 2)[0];
        return reading.roles().stream()
                .filter(r -> r.role().equals(role))
                .mapToInt(ScriptReading.RolePlayer::trackId)
                .findFirst()
                .orElseThrow();
    }

    private static double before(ScriptReading reading, int index, Possession possession) {
        for (int k = index - 1; k >= 0; k--) {
            if (!Double.isNaN(reading.steps().get(k).toSeconds())) {
                return reading.steps().get(k).toSeconds();
            }
        }
        return possession.fromSeconds();
    }

    private static double after(ScriptReading reading, int index, Possession possession) {
        for (int k = index + 1; k < reading.steps().size(); k++) {
            if (!Double.isNaN(reading.steps().get(k).fromSeconds())) {
                return reading.steps().get(k).fromSeconds();
            }
        }
        return possession.toSeconds();
    }
}
