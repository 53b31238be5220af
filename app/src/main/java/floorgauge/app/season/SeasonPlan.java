package floorgauge.app.season;

import floorgauge.sampleclips.scenario.ScenarioLibrary;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * What is practised when. Two practices a week; the light squad's first centre learns to hit his screens, the dark squad's
 * point guard comes to hold the ball too long, everyone else stays about as they are. The same plan every time.
 */
final class SeasonPlan {

    static final int WEEKS = 8;

    private static final int PRACTICES_A_WEEK = 2;
    private static final int REPETITIONS = 8;
    private static final long SEED = 41;

    /** A Monday in autumn. */
    private static final LocalDate FIRST_DAY = LocalDate.of(2026, 9, 28);

    private static final String SOUND = "sound";

    /**
     * An action of the scenario library with the version in which a screen or the spacing goes wrong and the one in which the
     * ball or a cut comes at the wrong time. Actions are chosen whose faults are plain enough to be flagged more often than
     * not when seen by a good tracker: a practice is to have something to judge.
     */
    private record Action(String name, String screenFault, String timingFault) {

        Action {
            for (String version : List.of(SOUND, screenFault, timingFault)) {
                if (!LIBRARY.contains(name + "-" + version)) {
                    throw new IllegalArgumentException("the scenario library has no " + name + "-" + version);
                }
            }
        }

        String scene(String version) {
            return name + "-" + version;
        }
    }

    private static final Set<String> LIBRARY = Set.copyOf(ScenarioLibrary.list());

    private static final List<Action> ACTIONS = List.of(
            new Action("pin-down", "screener-moving", "early-cut"),
            new Action("horns-stagger", "screen-misses", "pass-held"),
            new Action("floppy", "right-misses", "pass-held"),
            new Action("flex-down", "down-misses", "impatient"),
            new Action("high-ball-screen", "screen-misses", "screener-moving"),
            new Action("pick-and-pop", "screen-misses", "pass-held"),
            new Action("isolation", "crowded", "crowded"),
            new Action("motion-weak", "cross-misses", "pass-held"));

    private static final Map<Integer, String> TITLES = Map.of(0, "screens and counters", 1, "half court, five on five");

    private SeasonPlan() {}

    /** All practices, the oldest first. */
    static List<Repetition.Practice> practices() {
        List<Repetition.Practice> practices = new ArrayList<>();
        for (int number = 0; number < WEEKS * PRACTICES_A_WEEK; number++) {
            int week = number / PRACTICES_A_WEEK;
            int turn = number % PRACTICES_A_WEEK;
            LocalDate day = FIRST_DAY.plusWeeks(week).plusDays(3L * turn);
            practices.add(new Repetition.Practice(number + 1, day, TITLES.get(turn), repetitions(number, week)));
        }
        return practices;
    }

    private static List<Repetition> repetitions(int number, int week) {
        Random random = new Random(SEED * 1_000 + number);
        List<Repetition> list = new ArrayList<>();
        for (int i = 0; i < REPETITIONS; i++) {
            Action action = ACTIONS.get((number + i * 3) % ACTIONS.size());
            boolean light = i % 2 == 0;
            boolean secondCentre = (i + number) % 4 == 3;
            double learnt = week / (double) (WEEKS - 1);
            double screenFault = light && !secondCentre ? 0.95 - 0.80 * learnt : 0.35;
            double timingFault = light ? 0.20 : 0.15 + 0.45 * learnt;
            double chance = random.nextDouble();
            String version = chance < screenFault
                    ? action.screenFault()
                    : chance < screenFault + timingFault ? action.timingFault() : SOUND;
            list.add(new Repetition(
                    action.scene(version), random.nextBoolean(), light, secondCentre, SEED + number * 100L + i));
        }
        return list;
    }
}
