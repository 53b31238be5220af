package floorgauge.sampleclips.scenario;

import floorgauge.events.finding.FindingKind;
import floorgauge.sampleclips.labels.FigureNames;
import floorgauge.sampleclips.labels.LabelledEvent;
import floorgauge.sampleclips.labels.scene.SceneLabeller;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Chooses among takes of a scenario, as one films a drill until it was done right: the first take whose sound version earns no
 * flag by the definitions of what is measured, throws past everybody, and throws into open windows those passes that another
 * version holds; else the nearest to it. In the later takes passers wait for a free lane. All versions of a scenario come from that take; only where a version's faults can't be
 * seen in it, that version comes from the next take in which they can.
 */
final class Takes {

    private static final int MOST = 2 * Variation.PATIENT_FROM_TAKE;

    /** Choosing costs dozens of plays and every version asks again; what was chosen follows from the key alone. */
    private static final Map<Key, Integer> CHOSEN = Collections.synchronizedMap(new Latest());

    private record Key(Scenario scenario, long seed) {}

    private static final class Latest extends LinkedHashMap<Key, Integer> {

        private static final int MOST_KEPT = 1000;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, Integer> eldest) {
            return size() > MOST_KEPT;
        }
    }

    private Takes() {}

    /**
     * @return the sound version, played
     * @throws ScenarioException where no take can be played; the message is the first take's
     */
    static Choreographer sound(Scenario scenario, long seed) {
        Key key = new Key(scenario, seed);
        Integer chosen = CHOSEN.get(key);
        if (chosen == null) {
            chosen = choose(scenario, seed);
            CHOSEN.put(key, chosen);
        }
        return Choreographer.playSound(scenario, new Variation(scenario.name(), seed, chosen));
    }

    /**
     * A version, from a take in which its faults show if there is one.
     *
     * @throws ScenarioException where it can't be played as written
     */
    static PlayedScene play(Scenario scenario, String version, long seed) {
        Choreographer sound = sound(scenario, seed);
        PlayedScene scene = sound.with(version, seed);
        List<Fault> faults = scenario.versions().get(version);
        int least = FaultShown.unseen(faults, scene, seed);
        for (int take = 0; take < Variation.PATIENT_FROM_TAKE && least > 0; take++) {
            try {
                Choreographer other = Choreographer.playSound(scenario, new Variation(scenario.name(), seed, take));
                PlayedScene played = other.with(version, seed);
                int unseen = FaultShown.unseen(faults, played, seed);
                if (unseen < least) {
                    least = unseen;
                    scene = played;
                }
            } catch (ScenarioException e) {
                // This take can't be played; the chosen one could.
                continue;
            }
        }
        return scene;
    }

    private static int choose(Scenario scenario, long seed) {
        ScenarioException first = null;
        int best = -1;
        long fewest = Long.MAX_VALUE;
        for (int take = 0; take < MOST && fewest > 0; take++) {
            try {
                Choreographer played = Choreographer.playSound(scenario, new Variation(scenario.name(), seed, take));
                long amiss = amiss(scenario, played.scene(Scenario.SOUND), seed);
                if (amiss < fewest) {
                    fewest = amiss;
                    best = take;
                }
            } catch (ScenarioException e) {
                first = first == null ? e : first;
            }
        }
        if (first != null && best < 0) {
            throw first;
        }
        return best;
    }

    /** How many flags a scene earns, passes go through bodies, and passes that a version holds had no window to be thrown in. */
    private static long amiss(Scenario scenario, PlayedScene scene, long seed) {
        List<LabelledEvent> events = SceneLabeller.label(scene, seed).events();
        long amiss = events.stream()
                .filter(e -> e.kind().isFlag() && !e.cantTell().contains(LabelledEvent.EXISTENCE))
                .count();
        amiss += PassLanes.throughBodies(scene);
        for (PlayedStep step : scene.steps()) {
            if (scenario.holds(step.label())) {
                amiss += events.stream().anyMatch(e -> inWindow(e, step)) ? 0 : 1;
            }
        }
        return amiss;
    }

    private static boolean inWindow(LabelledEvent event, PlayedStep step) {
        return !step.verb().equals("pass")
                || (event.kind() == FindingKind.PASS
                        && event.fromSeconds() >= step.startSeconds()
                        && event.toSeconds() <= step.endSeconds() + 1e-6
                        && event.figure(FigureNames.DELAY).isPresent());
    }
}
