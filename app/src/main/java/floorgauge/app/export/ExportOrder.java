package floorgauge.app.export;

import java.util.List;
import java.util.Objects;

/**
 * What is to be exported.
 *
 * @param films the films with the findings that are wanted, in order
 * @param room film shown around each finding
 * @param search where the films themselves may lie
 */
public record ExportOrder(List<FilmChoice> films, Cut.Room room, FilmSearch search) {

    public ExportOrder {
        films = List.copyOf(films);
        Objects.requireNonNull(room, "room");
        Objects.requireNonNull(search, "search");
    }

    /** The stretch of film that shows a finding. */
    Cut cut(FilmChoice film, ChosenFinding finding) {
        return Cut.of(finding.finding(), room, film.film().findings().film().durationSeconds());
    }
}
