package floorgauge.eval.baseline;

import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.scene.SceneEvents;
import floorgauge.eval.score.Comparison;
import floorgauge.eval.score.ErrorRow;
import floorgauge.eval.score.EventRows;
import floorgauge.eval.score.EventSums;
import floorgauge.eval.score.FilmSums;
import floorgauge.eval.score.Measure;
import floorgauge.eval.score.RunSummary;
import floorgauge.eval.score.Sum;
import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.events.standards.Standards;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.tracks.TrackNoise;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The measurement of events on a share of the library's scenes, each from exact tracks and from those of a good tracker: few
 * enough to be measured with every build. The seed is one of development's; the score card uses others.
 */
public final class ScenarioBaseline {

    private static final long[] SEED = {101};
    private static final int EVERY = 3;

    /** Of some hundred measures at this confidence about one strays by chance; a change that strays with none is usual. */
    private static final double CONFIDENCE = 0.99;

    private static final int RESAMPLES = 1000;

    private static final Set<String> COMPARED = Set.of("precision", "recall", "F1", "roles right");
    private static final Set<String> PROBLEMS = Set.of("missed", "false", "wrong roles");

    private ScenarioBaseline() {}

    /** Measures every third scenario of the library. */
    public static RunSummary measure(Standards standards) {
        List<String> names = ScenarioLibrary.list();
        List<String> chosen = new ArrayList<>();
        for (int i = 0; i < names.size(); i += EVERY) {
            chosen.add(names.get(i));
        }
        List<PlayedScene> scenes = SceneEvents.played(chosen, SEED, new ArrayList<>());
        List<FilmSums> films = new ArrayList<>();
        List<ErrorRow> errors = new ArrayList<>();
        add(scenes, "exact tracks", TrackNoise.NONE, standards, films, errors);
        add(scenes, "a good tracker's tracks", TrackNoise.GOOD, standards, films, errors);
        return new RunSummary(films, errors);
    }

    /** The committed run against another, at a confidence that allows for the number of measures. */
    public static Comparison compare(RunSummary committed, RunSummary now) {
        return Comparison.of(committed, now, new ClipBootstrap(RESAMPLES, CONFIDENCE, 1));
    }

    /** Writes the baseline anew. @param arguments FILE */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 1) {
            System.err.println("baseline: expected FILE");
            System.exit(2);
        }
        Files.writeString(Path.of(arguments[0]), measure(Standards.defaults()).json());
    }

    private static void add(
            List<PlayedScene> scenes,
            String how,
            TrackNoise noise,
            Standards standards,
            List<FilmSums> films,
            List<ErrorRow> errors) {
        List<EventFilm> measured = SceneEvents.measured(scenes, noise, standards, new ArrayList<>());
        for (int i = 0; i < scenes.size(); i++) {
            EventFilm film = measured.get(i).named(scenes.get(i).name() + ", " + how);
            String render = "floorgauge render " + scenes.get(i).name() + " --seed " + SEED[0];
            films.add(new FilmSums(film.film(), compared(EventSums.of(film, EventTolerance.USUAL))));
            EventRows.of(film, EventTolerance.USUAL, (time, finding) -> render).stream()
                    .filter(r -> PROBLEMS.contains(r.problem()))
                    .forEach(errors::add);
        }
    }

    private static SortedMap<Measure, Sum> compared(SortedMap<Measure, Sum> all) {
        SortedMap<Measure, Sum> kept = new TreeMap<>();
        for (Map.Entry<Measure, Sum> entry : all.entrySet()) {
            boolean counts = entry.getValue().whole() > 0;
            if (counts && COMPARED.contains(entry.getKey().name())) {
                kept.put(entry.getKey(), entry.getValue());
            }
        }
        return kept;
    }
}
