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
     * An action of the scenario library with the versions in which a screen goes wrong and in which the ball is held. A version
     * that the library does not have is played soundly.
     */
    private record Action(String name, String screenFault, String passFault) {

        String scene(String version) {
            String scene = name + "-" + version;
            return LIBRARY.contains(scene) ? scene : name + "-" + SOUND;
        }
    }

    private static final Set<String> LIBRARY = Set.copyOf(ScenarioLibrary.list());

    private static final List<Action> ACTIONS = List.of(
            new Action("pin-down", "screen-misses", "pass-held"),
            new Action("chin-flare", "screen-misses", "late-cut"),
            new Action("floppy", "right-misses", "pass-held"),
            new Action("flex-down", "down-misses", "impatient"),
            new Action("high-ball-screen", "screener-moving", "screen-misses"),
            new Action("ball-screen-blitz", "screen-misses", "pass-held"),
            new Action("isolation", "crowded", "stalled"),
            new Action("horns-backdoor", "crowded", "pass-held"));

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
            double screenFault = light && !secondCentre ? 0.80 - 0.65 * learnt : 0.35;
            double passFault = light ? 0.20 : 0.15 + 0.45 * learnt;
            double chance = random.nextDouble();
            String version = chance < screenFault
                    ? action.screenFault()
                    : chance < screenFault + passFault ? action.passFault() : SOUND;
            list.add(new Repetition(
                    action.scene(version), random.nextBoolean(), light, secondCentre, SEED + number * 100L + i));
        }
        return list;
    }
}
