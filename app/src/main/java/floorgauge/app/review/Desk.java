package floorgauge.app.review;

import floorgauge.app.result.Digest;
import floorgauge.app.result.FindingsDocument;
import floorgauge.app.result.FindingsJson;
import floorgauge.app.result.FindingsJsonReader;
import floorgauge.app.result.ResultPlaces;
import floorgauge.app.store.FilmImport;
import floorgauge.app.store.Films;
import floorgauge.app.store.ImportDetails;
import floorgauge.app.store.Store;
import floorgauge.app.store.StoredFilm;
import floorgauge.court.failure.MendableException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Lays the night's results on the desk: takes results folders into the store, with the films that belong to them. */
public final class Desk {

    private static final Pattern DATE = Pattern.compile("(20\\d\\d)[-_.]?([01]\\d)[-_.]?([0-3]\\d)");
    private static final int DEEPEST = 4;

    private final Store store;
    private final List<Path> filmFolders;

    /** @param filmFolders where films are looked for, with the folders below */
    public Desk(Store store, List<Path> filmFolders) {
        this.store = store;
        this.filmFolders = List.copyOf(filmFolders);
    }

    /**
     * Takes every film's folder in a results folder, or a single film's folder.
     *
     * @param problems takes one line for each folder that cannot be read; the others are taken
     * @return how many films were found
     */
    public int lay(Path results, Consumer<String> problems) {
        List<Path> folders = ResultPlaces.below(results);
        for (Path folder : folders) {
            try {
                take(folder);
            } catch (MendableException e) {
                problems.accept(e.getMessage());
            }
        }
        return folders.size();
    }

    private void take(Path folder) {
        if (lies(folder)) {
            return;
        }
        FindingsDocument read = FindingsJsonReader.read(folder.resolve(ResultPlaces.FINDINGS));
        Optional<Path> film = film(read.film().name(), read.film().sha256());
        String name = read.film().name().replaceFirst("\\.[A-Za-z0-9]{2,4}$", "");
        LocalDate day = day(read.film().name(), film.orElse(folder.resolve(ResultPlaces.FINDINGS)));
        new FilmImport(store).take(folder, new ImportDetails(day, name, film, false));
    }

    /** Whether these very results lie on the desk already, with their film where they have a picture; only the head is read. */
    private boolean lies(Path folder) {
        return FindingsJson.made(folder.resolve(ResultPlaces.FINDINGS))
                .filter(made -> new FilmImport(store).holds(made.run(), folder))
                .flatMap(made -> new Films(store).film(StoredFilm.idOf(made.filmSha256())))
                .filter(f -> f.widthPixels() == 0
                        || f.film().filter(Files::isRegularFile).isPresent())
                .isPresent();
    }

    /** The film of this name whose bytes are those that were measured. */
    private Optional<Path> film(String name, String sha256) {
        for (Path candidate : named(name)) {
            try {
                if (Digest.ofFile(candidate).equals(sha256)) {
                    return Optional.of(candidate.toAbsolutePath());
                }
            } catch (IOException e) {
                continue;
            }
        }
        return Optional.empty();
    }

    private List<Path> named(String name) {
        List<Path> found = new ArrayList<>();
        for (Path folder : filmFolders) {
            try (Stream<Path> walk = Files.walk(folder, DEEPEST)) {
                walk.filter(f -> f.getFileName() != null
                                && f.getFileName().toString().equals(name))
                        .filter(Files::isRegularFile)
                        .sorted()
                        .forEach(found::add);
            } catch (IOException | UncheckedIOException e) {
                continue;
            }
        }
        return found;
    }

    /** A date in the name, else that of the file. */
    static LocalDate day(String name, Path file) {
        Matcher date = DATE.matcher(name);
        if (date.find()) {
            try {
                return LocalDate.of(
                        Integer.parseInt(date.group(1)),
                        Integer.parseInt(date.group(2)),
                        Integer.parseInt(date.group(3)));
            } catch (DateTimeException e) {
                return fileDay(file);
            }
        }
        return fileDay(file);
    }

    private static LocalDate fileDay(Path file) {
        try {
            return LocalDate.ofInstant(Files.getLastModifiedTime(file).toInstant(), ZoneId.systemDefault());
        } catch (IOException e) {
            return LocalDate.EPOCH;
        }
    }
}
