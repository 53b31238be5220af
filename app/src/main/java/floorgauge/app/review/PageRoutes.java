package floorgauge.app.review;

import floorgauge.app.drawing.Svg;
import floorgauge.app.store.Films;
import floorgauge.app.store.LabelFile;
import floorgauge.app.store.Player;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredFinding;
import floorgauge.app.store.StoredPossession;
import floorgauge.app.store.StoredTrack;
import floorgauge.app.store.Subject;
import floorgauge.sampleclips.labels.LabelWriter;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** The pages that are read. */
final class PageRoutes {

    private static final int LAST_FINDINGS = 8;
    private static final int LAST_FILMS = 3;

    private final Room room;
    private final Supplier<String> making;

    /** @param making a line on what is still being made; blank for none */
    PageRoutes(Room room, Supplier<String> making) {
        this.room = room;
        this.making = making;
    }

    void add(RoutesConfig routes) {
        routes.get("/page/uplot/{name}", r -> Assets.answer(r, "uplot/" + r.pathParam("name")));
        routes.get("/page/{name}", r -> Assets.answer(r, r.pathParam("name")));
        routes.get("/before", r -> r.html(OtherPages.before()));
        routes.get("/", r -> r.html(newest()));
        routes.get("/practices", r -> r.html(OtherPages.practices(room.films().all())));
        routes.get("/practice/{film}", r -> r.html(sheet(room.film(r))));
        routes.get("/practice/{film}/players", r -> r.html(who(room.film(r))));
        routes.get(
                "/practice/{film}/by-hand",
                r -> r.html(findingPage(room.film(r)).writeEmpty()));
        routes.get("/practice/{film}/labels.json", this::labels);
        routes.get("/finding/{id}", r -> r.html(finding(room.found(r))));
        routes.get("/kept/{id}", r -> {
            Subject subject = room.verdicts().subject(r.pathParam("id")).orElseThrow(Requests::missing);
            r.html(findingPage(room.film(subject.filmId())).write(subject));
        });
        routes.get("/players", r -> r.html(OtherPages.players(room.roster().players())));
        routes.get("/player/{id}", r -> r.html(player(r.pathParam("id"))));
        routes.get("/trends", r -> r.html(room.trends().page().write(Optional.ofNullable(r.queryParam("topic")))));
        routes.get(
                "/trends/marks",
                r -> r.html(room.trends()
                        .page()
                        .writeBehind(Requests.query(r, "topic"), Requests.query(r, "who"), Requests.day(r))));
        routes.get("/keys", r -> r.html(OtherPages.keys()));
    }

    private String newest() {
        return room.films().newest().map(this::sheet).orElseGet(() -> OtherPages.practices(List.of()));
    }

    String sheet(StoredFilm film) {
        Films films = room.films();
        List<StoredPossession> possessions = films.possessions(film.id());
        List<StoredFinding> findings = films.findings(film.id());
        Names names = new Names(films.tracks(film.id()));
        return new SheetPage(
                        film,
                        possessions,
                        findings,
                        room.verdicts().ofFilm(film.id()),
                        names,
                        room.drawings().ofPossessions(film, possessions, findings, names),
                        films.notSeen(film.id()),
                        making.get(),
                        room.notes().ofFilm(film.id()).orElse(""))
                .write();
    }

    private String who(StoredFilm film) {
        return new WhoPage(film, room.films().tracks(film.id()), room.roster().players())
                .write(room.roster().lost(film.id()));
    }

    private FindingPage findingPage(StoredFilm film) {
        List<StoredTrack> tracks = room.films().tracks(film.id());
        return new FindingPage(film, new Names(tracks), tracks);
    }

    private String finding(Room.Found found) {
        StoredFilm film = found.film();
        return new FindingPage(film, found.names(), found.tracks())
                .write(
                        found.finding(),
                        found.possession(),
                        room.films().findings(film.id()),
                        room.verdicts().ofFinding(found.finding().id()),
                        room.drawings().ofFinding(film, found.possession(), found.finding(), found.names()),
                        room.shown().of(film).isPresent());
    }

    private String player(String id) {
        Player player = room.roster().player(id).orElseThrow(Requests::missing);
        List<String> last = room.films().all().stream()
                .limit(LAST_FILMS)
                .map(Films.Listed::film)
                .flatMap(f -> {
                    Names names = new Names(room.films().tracks(f.id()));
                    return Words.byCost(room.films().findings(f.id())).stream()
                            .filter(g -> g.finding().roles().stream()
                                    .anyMatch(h -> names.player(h.trackId())
                                            .filter(p -> p.id().equals(id))
                                            .isPresent()))
                            .map(g -> "<li><a href=\"/finding/" + g.id() + "\">"
                                    + Svg.escape(names.in(g.finding().sentence())) + "</a> <span class=\"aside\">"
                                    + Svg.escape(f.title()) + "</span></li>\n");
                })
                .limit(LAST_FINDINGS)
                .toList();
        return OtherPages.player(player, room.trends().page().sentences(id), last);
    }

    private void labels(Context request) {
        StoredFilm film = room.film(request);
        request.header("Content-Disposition", "attachment; filename=\"" + DeskRoutes.labelName(film) + "\"")
                .contentType("application/json")
                .result(LabelWriter.text(new LabelFile(room.store()).labels(film, "analyst")));
    }
}
