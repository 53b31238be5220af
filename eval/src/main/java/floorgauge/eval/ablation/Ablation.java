package floorgauge.eval.ablation;

import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.calibration.CourtOverTime;
import floorgauge.eval.film.GymFilm;
import floorgauge.vision.network.ModelFolder;
import floorgauge.vision.timing.StageTimes;
import floorgauge.vision.tracking.FilmTracker;
import floorgauge.vision.tracking.RecordedLooks;
import floorgauge.vision.tracking.TrackedFilm;
import floorgauge.vision.tracking.TrackingSettings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Tracks films with all parts, and with each switched off in turn, and writes the table. Films are seen anew only where a part
 * changes what the networks see; else the tracks are made again of what they saw.
 */
public final class Ablation {

    private final StringBuilder text = new StringBuilder();

    private Ablation() {}

    /** @param arguments FILE DATE FILM_OR_GYM_FOLDER... ; a folder holds the gym clips, a film has its truth beside it */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length < 3) {
            System.err.println("give FILE DATE FILM_OR_GYM_FOLDER...");
            System.exit(2);
            return;
        }
        List<AblationFilm> films = new ArrayList<>();
        for (String argument : List.of(arguments).subList(2, arguments.length)) {
            Path path = Path.of(argument);
            films.add(Files.isDirectory(path) ? new AblationFilm.Gym(new GymFilm(path)) : new AblationFilm.Clip(path));
        }
        Ablation ablation = new Ablation();
        ablation.text.append("# What each part of the tracking is worth\n\nMade on " + arguments[1]
                + " by `eval/ablation`; not edited by hand. Boxes at an overlap of half; feet are the median distance on the floor;"
                + " numbers are tracks on which a jersey's was read, and those of them on which it is right (the gym film's are not"
                + " labelled); seconds are the networks' and the rest's, on a machine with other work.\n");
        for (AblationFilm film : films) {
            ablation.add(film);
        }
        Files.writeString(Path.of(arguments[0]), ablation.text);
    }

    private void add(AblationFilm film) throws IOException {
        CourtCalibration court = film.court();
        text.append(
                "\n## " + film.name() + "\n\n"
                        + "| tracking | tracks | HOTA | DetA | AssA | IDF1 | switches | misses | false alarms | feet, m | legs exchanged | numbers read, right"
                        + " | detector, s | poses, s | numbers, s | rest, s |\n"
                        + "| --- | --: | --: | --: | --: | --: | --: | --: | --: | --: | --: | --: | --: | --: | --: | --: |\n");
        RecordedLooks whole = null;
        for (Variant variant : Variant.all()) {
            StageTimes times = new StageTimes();
            TrackingSettings settings = TrackingSettings.defaults().withParts(variant.parts());
            RecordedLooks looks = whole;
            if (variant.seenAnew() || looks == null) {
                try (FilmTracker tracker = new FilmTracker(settings, ModelFolder.standard(), variant.precision())) {
                    looks = tracker.seen(film.film(), CourtOverTime.still(court), times);
                }
                whole = whole == null ? looks : whole;
            }
            RecordedLooks used = looks;
            TrackedFilm tracked = times.during("tracks", () -> used.tracked(settings, court.rules()));
            row(
                    variant,
                    film.score(tracked.tracks()),
                    tracked.tracks().players().size(),
                    times.seconds());
        }
    }

    private void row(Variant variant, AblationFilm.Result result, int tracks, Map<String, Double> seconds) {
        double detector = seconds.getOrDefault("detector", 0.0);
        double poses = seconds.getOrDefault("poses", 0.0);
        double numbers = seconds.getOrDefault("numbers", 0.0);
        double all = seconds.values().stream().mapToDouble(Double::doubleValue).sum();
        String row = String.format(
                Locale.ROOT,
                "| %s | %d | %.3f | %.3f | %.3f | %.3f | %d | %d | %d | %s | %s | %d, %d | %.1f | %.1f | %.1f | %.1f |%n",
                variant.name(),
                tracks,
                result.scores().hota().hota(),
                result.scores().hota().detectionAccuracy(),
                result.scores().hota().associationAccuracy(),
                result.scores().identity().idf1(),
                result.scores().clear().switches(),
                result.scores().clear().misses(),
                result.scores().clear().falseAlarms(),
                result.feetMetres().isPresent()
                        ? String.format(Locale.ROOT, "%.2f", result.feetMetres().getAsDouble())
                        : "",
                result.legsExchanged().isPresent()
                        ? String.format(
                                Locale.ROOT, "%.3f", result.legsExchanged().getAsDouble())
                        : "",
                result.numbersRead(),
                result.numbersRight(),
                detector,
                poses,
                numbers,
                all - detector - poses - numbers);
        System.err.print(row);
        text.append(row);
    }
}
