package floorgauge.app.review;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.file.Path;
import java.util.Optional;

/** What the pages' scripts read: films by bytes, places and pictures, trends, keys. */
final class DataRoutes {

    private static final double MOST_SECONDS = 60;

    private final Room room;

    DataRoutes(Room room) {
        this.room = room;
    }

    void add(RoutesConfig routes) {
        routes.get("/film/{film}", r -> FilmBytes.answer(r.disableCompression(), film(r)));
        routes.head("/film/{film}", r -> FilmBytes.answer(r.disableCompression(), film(r)));
        routes.get("/data/finding/{id}", this::finding);
        routes.get("/data/film/{film}/pictures", this::pictures);
        routes.get(
                "/data/clip/{id}",
                r -> Requests.done(r, room.clips().done(r.pathParam("id")).orElse("")));
        routes.get(
                "/data/trends",
                r -> Requests.json(r, room.trends().page().data(Optional.ofNullable(r.queryParam("topic")))));
        routes.get(
                "/data/keys",
                r -> Requests.json(r, room.store().setting(DeskRoutes.KEYS).orElse("{}")));
    }

    private Path film(Context request) {
        return room.shown().of(room.film(request)).orElseThrow(Requests::missing);
    }

    private void finding(Context request) {
        Room.Found found = room.found(request);
        Requests.json(
                request,
                FindingData.of(
                        found.film(),
                        found.possession(),
                        found.finding().finding(),
                        found.names(),
                        room.films().pixelToFloor(found.film().id()),
                        room.shown().of(found.film()).isPresent()));
    }

    private void pictures(Context request) {
        double from = Requests.number(request, "from");
        double to = Requests.number(request, "to");
        if (!(to - from <= MOST_SECONDS)) {
            throw new IllegalArgumentException("at most a minute at once");
        }
        Requests.json(request, FindingData.pictures(room.film(request), from, to));
    }
}
