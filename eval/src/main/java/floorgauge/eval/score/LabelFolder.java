package floorgauge.eval.score;

import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.sampleclips.labels.FilmLabels;
import floorgauge.sampleclips.labels.LabelReader;
import floorgauge.sampleclips.labels.LabelledPerson;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Reads label files, {@code NAME.labels.json}. Beside one may lie {@code NAME.mot.txt} with labelled tracks: boxes in the
 * picture, floor metres in the world columns, frames from 1, ids those of the label file's people.
 */
public final class LabelFolder {

    private static final String LABELS = ".labels.json";
    private static final String TRACKS = ".mot.txt";

    private LabelFolder() {}

    /**
     * @param place a label file, or a folder of them
     * @return in order of file name
     * @throws floorgauge.court.failure.MendableException where there is none, or one is not as expected
     */
    public static List<LabelledFilm> read(Path place) {
        List<LabelledFilm> films = new ArrayList<>();
        for (Path file : files(place)) {
            films.add(new LabelledFilm(file, LabelReader.read(file), tracks(file)));
        }
        requireSamePeople(films);
        return films;
    }

    private static List<Path> files(Path place) {
        if (Files.isRegularFile(place)) {
            return List.of(place);
        }
        if (!Files.isDirectory(place)) {
            throw new ScoreException(place, "labels", "expected a label file or a folder of them, found nothing there");
        }
        try (Stream<Path> list = Files.list(place)) {
            List<Path> files = list.filter(f -> f.getFileName().toString().endsWith(LABELS))
                    .sorted()
                    .toList();
            if (files.isEmpty()) {
                throw new ScoreException(
                        place, "labels", "expected at least one label file (*.labels.json), found none");
            }
            return files;
        } catch (IOException e) {
            throw new ScoreException(place, "labels", "cannot be read: " + e.getMessage(), e);
        }
    }

    private static Optional<MotChallengeFile> tracks(Path labels) {
        String name = labels.getFileName().toString();
        String stem = name.endsWith(LABELS) ? name.substring(0, name.length() - LABELS.length()) : name;
        Path tracks = labels.resolveSibling(stem + TRACKS);
        return Files.isRegularFile(tracks) ? Optional.of(MotChallengeFile.read(tracks)) : Optional.empty();
    }

    /** Two annotators of one film must mean the same person by an id, or their roles cannot be compared. */
    private static void requireSamePeople(List<LabelledFilm> films) {
        Map<String, LabelledFilm> first = new HashMap<>();
        for (LabelledFilm film : films) {
            LabelledFilm other = first.putIfAbsent(filmKey(film.labels()), film);
            if (other != null) {
                requireSamePeople(other, film);
            }
        }
    }

    private static void requireSamePeople(LabelledFilm first, LabelledFilm second) {
        Map<Integer, LabelledPerson> known = new HashMap<>();
        first.labels().people().forEach(p -> known.put(p.id(), p));
        for (LabelledPerson person : second.labels().people()) {
            LabelledPerson same = known.get(person.id());
            boolean otherNumber = same != null
                    && same.number().isPresent()
                    && person.number().isPresent()
                    && !same.number().equals(person.number());
            if (same != null && (same.side() != person.side() || otherNumber)) {
                throw new ScoreException(
                        second.file(),
                        "people, id " + person.id(),
                        "expected the person that " + first.file().getFileName() + " gives this id ("
                                + inWords(same) + "), found another (" + inWords(person)
                                + "); number people alike in both files");
            }
        }
        if (first.labels().annotator().equals(second.labels().annotator())) {
            throw new ScoreException(
                    second.file(),
                    "annotator",
                    "expected another annotator than " + first.file().getFileName() + " of the same film has, found '"
                            + second.labels().annotator() + "' again");
        }
    }

    private static String inWords(LabelledPerson person) {
        String side = person.side().name().toLowerCase(java.util.Locale.ROOT);
        return person.number().isPresent() ? side + " number " + person.number().getAsInt() : side;
    }

    /** What tells films apart: the digest where there is one, else the scene. */
    static String filmKey(FilmLabels labels) {
        return labels.film()
                .map(f -> f.sha256())
                .orElseGet(
                        () -> labels.scene().map(s -> s.name() + " " + s.seed()).orElse(""));
    }
}
