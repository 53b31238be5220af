package floorgauge.app.review;

import com.fasterxml.jackson.databind.JsonNode;
import floorgauge.app.export.Cut;
import floorgauge.app.export.ExportFolder;
import floorgauge.app.export.ExportKind;
import floorgauge.app.export.ExportOrder;
import floorgauge.app.export.FilmChoice;
import floorgauge.app.export.FilmSearch;
import floorgauge.app.export.MeasuredFolder;
import floorgauge.app.export.SeasonBook;
import floorgauge.app.store.LabelFile;
import floorgauge.app.store.Player;
import floorgauge.app.store.StoredFilm;
import floorgauge.app.store.StoredFinding;
import floorgauge.court.failure.MendableException;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;

/** Keeps players, notes and keys, and writes clips and label files. */
final class DeskRoutes {

    /** The setting that the analyst's keys are kept under. */
    static final String KEYS = "keys";

    /** The setting that says when the notice was agreed to. */
    static final String CONSENT = "consent";

    private static final double CLIP_ROOM_SECONDS = 2;

    private final Room room;

    DeskRoutes(Room room) {
        this.room = room;
    }

    void add(RoutesConfig routes) {
        routes.post("/do/agree", r -> {
            room.store().keep(CONSENT, Instant.now().toString());
            Requests.done(r, "agreed");
        });
        routes.post("/do/player", this::keepPlayer);
        routes.post("/do/assign", this::assign);
        routes.post("/do/labels", r -> {
            StoredFilm film = room.film(Requests.body(r).path("film").asText());
            Requests.done(r, "Written to " + writeLabels(film) + ".");
        });
        routes.post("/do/clip", this::clip);
        routes.post("/do/note", r -> {
            JsonNode body = Requests.body(r);
            room.notes()
                    .keep(
                            room.film(body.path("film").asText()).id(),
                            body.path("note").asText());
            Requests.done(r, "The note is kept.");
        });
        routes.post("/do/keys", r -> {
            room.store().keep(KEYS, KeySettings.checked(Requests.body(r)));
            Requests.done(r, "Kept.");
        });
    }

    private void keepPlayer(Context request) {
        JsonNode body = Requests.body(request);
        String id = body.path("id").asText();
        if (!id.isEmpty() && room.roster().player(id).isEmpty()) {
            throw new IllegalArgumentException("no such player");
        }
        room.roster()
                .keep(new Player(
                        id.isEmpty() ? UUID.randomUUID().toString() : id,
                        body.path("name").asText(),
                        body.path("number").isInt()
                                ? OptionalInt.of(body.get("number").asInt())
                                : OptionalInt.empty(),
                        body.path("squad").asText(),
                        body.path("position").asText(),
                        body.path("active").asBoolean(true)));
        Requests.done(request, "Kept.");
    }

    private void assign(Context request) {
        JsonNode body = Requests.body(request);
        String player = body.path("player").asText();
        room.roster()
                .assign(
                        room.film(body.path("film").asText()),
                        body.path("track").asInt(),
                        player.isEmpty() ? Optional.empty() : Optional.of(player));
        Requests.done(request, player.isEmpty() ? "Taken back." : "Kept for this film.");
    }

    /** Begins to cut a clip of a finding out of its film, with what was measured burnt in. */
    private void clip(Context request) {
        StoredFinding found =
                room.finding(Requests.body(request).path("finding").asText());
        StoredFilm film = room.film(found.filmId());
        Path file = film.film()
                .filter(Files::isRegularFile)
                .orElseThrow(() -> new MendableException(
                        film.simulated()
                                ? "a simulated practice has no film to cut a clip from"
                                : "the film was not found; start the page with --films and its folder"));
        room.clips().start(found.id(), () -> cut(found, film, file));
        Requests.done(request, "The clip is being cut.");
    }

    /** @return where it is, in a sentence */
    private String cut(StoredFinding found, StoredFilm film, Path file) {
        MeasuredFolder measured = MeasuredFolder.at(List.of(film.folder())).get(0);
        ExportFolder folder = ExportFolder.open(room.folder().resolve("clips"));
        ExportKind.CLIPS.write(
                new ExportOrder(
                        List.of(FilmChoice.of(
                                measured, new SeasonBook(room.store()), (f, one) -> one.number() == found.number())),
                        new Cut.Room(CLIP_ROOM_SECONDS, CLIP_ROOM_SECONDS),
                        new FilmSearch(List.of(file))),
                folder);
        return "The clip is in " + folder.written().get(0) + ".";
    }

    private Path writeLabels(StoredFilm film) {
        String text = new LabelFile(room.store()).write(film, "analyst");
        ExportFolder labels = ExportFolder.open(room.folder().resolve("labels"));
        labels.write(labelName(film), file -> Files.writeString(file, text, StandardCharsets.UTF_8));
        return labels.written().get(0);
    }

    /** From the film's id alone, since its name may hold anything. */
    static String labelName(StoredFilm film) {
        return film.id() + ".labels.json";
    }
}
