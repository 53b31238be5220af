package floorgauge.eval.ablation;

import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.PlayerTrack;
import floorgauge.eval.events.TrackIdentities;
import floorgauge.eval.film.FilmMeasurement;
import floorgauge.eval.film.GymFilm;
import floorgauge.eval.film.RenderedTruth;
import floorgauge.eval.tracking.BoxSimilarity;
import floorgauge.eval.tracking.ClearMatching;
import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.eval.tracking.MotChallengeRow;
import floorgauge.eval.tracking.SimilarityTable;
import floorgauge.eval.tracking.TrackSequence;
import floorgauge.eval.tracking.TrackingScores;
import floorgauge.sampleclips.labels.LabelReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A film with the truth about it. */
interface AblationFilm {

    /** Of the table's columns. */
    String name();

    Path film();

    CourtCalibration court() throws IOException;

    Result score(FilmTracks tracks) throws IOException;

    /**
     * How a film's tracks compare.
     *
     * @param scores of boxes
     * @param feetMetres median distance of foot points; empty where the truth has none
     * @param legsExchanged share of looks in which the left ankle is nearer to where the right one is; empty likewise
     * @param numbersRead tracks on which a number was read
     * @param numbersRight of these, those whose person wears it
     */
    record Result(
            TrackingScores scores,
            OptionalDouble feetMetres,
            OptionalDouble legsExchanged,
            int numbersRead,
            int numbersRight) {}

    /** The gym film, whose labels are boxes alone. */
    record Gym(GymFilm gym) implements AblationFilm {

        @Override
        public String name() {
            return "gym film (real)";
        }

        @Override
        public Path film() {
            return gym.film();
        }

        @Override
        public CourtCalibration court() throws IOException {
            return gym.court();
        }

        @Override
        public Result score(FilmTracks tracks) {
            int read = (int) tracks.players().stream()
                    .filter(p -> p.appearance().jersey().isPresent())
                    .count();
            return new Result(gym.scores(tracks), OptionalDouble.empty(), OptionalDouble.empty(), read, 0);
        }
    }

    /** A rendered clip with its truth beside it: NAME.mot.txt, NAME.labels.json. */
    record Clip(Path film) implements AblationFilm {

        private static final double SAME_BOX = 0.5;

        @Override
        public String name() {
            return film.getFileName().toString().replace(".mp4", "");
        }

        private Path beside(String ending) {
            return film.resolveSibling(name() + ending);
        }

        @Override
        public CourtCalibration court() {
            RuleSet rules = RuleSet.named(
                            LabelReader.read(beside(".labels.json")).rules())
                    .orElseThrow();
            CourtCalibration court = FilmMeasurement.court(film, rules);
            if (court.status() == CalibrationStatus.NONE) {
                throw new IllegalStateException(film + ": " + court.reason());
            }
            return court;
        }

        @Override
        public Result score(FilmTracks tracks) throws IOException {
            MotChallengeFile truth = MotChallengeFile.read(beside(".mot.txt"));
            Map<Long, Double> times = tracks.frameTimesSeconds();
            double rate = (times.size() - 1) / (times.get((long) times.size() - 1) - times.get(0L));
            SimilarityTable table = SimilarityTable.of(
                    truth.boxes(rate, times.size() - 1L), TrackSequence.boxes(tracks), new BoxSimilarity());
            TrackIdentities identities =
                    new TrackIdentities(ClearMatching.usual().match(table));
            int read = 0;
            int right = 0;
            Map<Integer, OptionalInt> worn = new HashMap<>();
            LabelReader.read(beside(".labels.json")).people().forEach(p -> worn.put(p.id(), p.number()));
            for (PlayerTrack track : tracks.players()) {
                if (track.appearance().jersey().isPresent()) {
                    int number = track.appearance().jersey().get().number();
                    OptionalInt person = person(track, identities);
                    OptionalInt wears = person.isPresent()
                            ? worn.getOrDefault(person.getAsInt(), OptionalInt.empty())
                            : OptionalInt.empty();
                    read++;
                    right += wears.equals(OptionalInt.of(number)) ? 1 : 0;
                    System.err.printf(
                            "%s: track %d read %d (%.2f), wears %s%n",
                            name(),
                            track.id(),
                            number,
                            track.appearance().jersey().get().probability(),
                            wears);
                }
            }
            return new Result(
                    TrackingScores.of(table, SAME_BOX),
                    feet(truth, tracks),
                    LegTally.exchanged(RenderedTruth.beside(film), tracks),
                    read,
                    right);
        }

        /** Whom the track follows for most of its time. */
        private static OptionalInt person(PlayerTrack track, TrackIdentities identities) {
            Map<Integer, Integer> counts = new HashMap<>();
            track.observations()
                    .forEach(o -> identities
                            .labelledPerson(track.id(), o.timeSeconds())
                            .ifPresent(id -> counts.merge(id, 1, Integer::sum)));
            return counts.entrySet().stream()
                    .max(Map.Entry.<Integer, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                    .map(e -> OptionalInt.of(e.getKey()))
                    .orElse(OptionalInt.empty());
        }

        /** A court has no first half: the way round that fits is taken. */
        private static OptionalDouble feet(MotChallengeFile truth, FilmTracks tracks) {
            Map<Long, List<MotChallengeRow>> rows = new HashMap<>();
            truth.rows()
                    .forEach(r -> rows.computeIfAbsent(r.frame(), f -> new ArrayList<>())
                            .add(r));
            List<Double> straight = new ArrayList<>();
            List<Double> turned = new ArrayList<>();
            tracks.frames()
                    .forEach(frame -> frame.players()
                            .forEach(p -> p.observation().box().ifPresent(box -> {
                                for (MotChallengeRow row : rows.getOrDefault(frame.frame(), List.of())) {
                                    if (row.floor().isPresent()
                                            && row.box()
                                                    .filter(b -> b.intersectionOverUnion(box) >= SAME_BOX)
                                                    .isPresent()) {
                                        FloorPoint at = row.floor().get();
                                        FloorPoint seen = p.observation().foot().mean();
                                        straight.add(at.distanceTo(seen));
                                        turned.add(at.turnedHalf().distanceTo(seen));
                                    }
                                }
                            })));
            return straight.isEmpty()
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(Math.min(median(straight), median(turned)));
        }

        private static double median(List<Double> values) {
            return values.stream().sorted().toList().get(values.size() / 2);
        }
    }
}
