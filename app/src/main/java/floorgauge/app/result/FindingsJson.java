package floorgauge.app.result;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import floorgauge.court.track.Appearance;
import floorgauge.court.track.IdentityDoubt;
import floorgauge.court.track.JerseyReading;
import floorgauge.court.track.PlayerTrack;
import floorgauge.events.finding.NotSeen;
import floorgauge.events.finding.Possession;
import floorgauge.events.finding.PossessionFindings;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Writes {@code findings.json}, and reads from it which run made it. The schema stands in {@code findings.schema.json}
 * beside this class and in the documentation; {@link #VERSION} grows with every change that an old reader would trip over.
 */
public final class FindingsJson {

    /** Name of the format, the value of {@code format}. */
    public static final String FORMAT = "floorgauge-findings";

    /** Version of the format, the value of {@code version}. */
    public static final int VERSION = 1;

    private static final JsonFactory FACTORY = new JsonFactory();

    private FindingsJson() {}

    /** Writes the file; the same film gives the same bytes. */
    public static void write(MeasuredFilm measured, Path file) throws IOException {
        try (OutputStream out = Files.newOutputStream(file);
                JsonGenerator json = FACTORY.createGenerator(out)) {
            DefaultPrettyPrinter printer =
                    new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n"));
            json.setPrettyPrinter(printer);
            new Writer(new JsonFields(json)).write(measured);
            json.writeRaw('\n');
        }
    }

    /**
     * What made a file.
     *
     * @param run key of the run, see {@link RunSettings#keyFor}
     * @param filmSha256 digest of the film
     */
    public record Made(String run, String filmSha256) {}

    /** What made a file; empty where it is missing, of another version, or not ours. Only its head is read. */
    public static Optional<Made> made(Path file) {
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        try (JsonParser parser = FACTORY.createParser(Files.newInputStream(file))) {
            return madeFrom(parser);
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private static Optional<Made> madeFrom(JsonParser parser) throws IOException {
        boolean ours = parser.nextToken() == JsonToken.START_OBJECT
                && FORMAT.equals(next(parser, "format"))
                && String.valueOf(VERSION).equals(next(parser, "version"));
        if (!ours) {
            return Optional.empty();
        }
        String run = next(parser, "run");
        boolean film = "film".equals(parser.nextFieldName()) && parser.nextToken() == JsonToken.START_OBJECT;
        if (run == null || !film || next(parser, "name") == null) {
            return Optional.empty();
        }
        return Optional.ofNullable(next(parser, "sha256")).map(sha256 -> new Made(run, sha256));
    }

    /** The value of the next field as text; null where another field stands there. */
    private static String next(JsonParser parser, String field) throws IOException {
        if (!field.equals(parser.nextFieldName())) {
            return null;
        }
        parser.nextToken();
        return parser.getValueAsString();
    }

    /** One method a part of the file, from the outside in. */
    private record Writer(JsonFields json) {

        void write(MeasuredFilm measured) throws IOException {
            json.object(() -> {
                json.text("format", FORMAT);
                json.whole("version", VERSION);
                json.text("run", measured.settings().keyFor(measured.film().sha256()));
                json.object("film", () -> film(measured.film()));
                json.object("settings", () -> settings(measured.settings()));
                json.object("court", () -> court(measured.court()));
                json.array("players", measured.tracks().players(), this::player);
                json.array("possessions", measured.findings().possessions(), this::possession);
                json.array("notSeen", measured.findings().notSeen(), this::notSeen);
                json.texts("cautions", Cautions.TEXT);
            });
        }

        private void film(FilmSource film) throws IOException {
            json.text("name", film.name());
            json.text("sha256", film.sha256());
            json.whole("widthPixels", film.widthPixels());
            json.whole("heightPixels", film.heightPixels());
            json.number("durationSeconds", film.durationSeconds());
            json.whole("frames", film.frames());
        }

        private void settings(RunSettings settings) throws IOException {
            for (Map.Entry<String, String> setting : settings.values().entrySet()) {
                json.text(setting.getKey(), setting.getValue());
            }
        }

        private void court(CourtReading court) throws IOException {
            json.text("rules", court.rules().name());
            json.text("source", court.source());
            json.text("status", court.status());
            json.text("reason", court.reason());
            json.text("camera", court.camera());
            if (!court.pixelToFloor().isEmpty()) {
                json.exactNumbers("pixelToFloor", court.pixelToFloor());
            }
        }

        private void player(PlayerTrack track) throws IOException {
            List<floorgauge.court.track.PlayerObservation> seen = track.observations();
            json.whole("id", track.id());
            json.word("team", track.team());
            json.number("teamProbability", track.teamProbability());
            json.number("fromSeconds", seen.get(0).timeSeconds());
            json.number("toSeconds", seen.get(seen.size() - 1).timeSeconds());
            json.whole("observations", seen.size());
            appearance(track.appearance());
            json.array("identityDoubts", track.doubts(), this::doubt);
        }

        private void appearance(Appearance appearance) throws IOException {
            if (appearance.shirtRgb().isPresent()) {
                json.text(
                        "shirt",
                        String.format(
                                Locale.ROOT, "#%06x", appearance.shirtRgb().getAsInt()));
            }
            Optional<JerseyReading> jersey = appearance.jersey();
            if (jersey.isPresent()) {
                json.whole("jerseyNumber", jersey.get().number());
                json.number("jerseyProbability", jersey.get().probability());
            }
        }

        private void doubt(IdentityDoubt doubt) throws IOException {
            json.whole("otherId", doubt.otherTrackId());
            json.number("fromSeconds", doubt.fromSeconds());
            json.number("toSeconds", doubt.toSeconds());
            json.number("swapProbability", doubt.swapProbability());
        }

        private void possession(PossessionFindings measured) throws IOException {
            Possession possession = measured.possession();
            json.whole("number", possession.number());
            json.number("fromSeconds", possession.fromSeconds());
            json.number("toSeconds", possession.toSeconds());
            json.word("attack", possession.attack());
            json.number("attackProbability", possession.attackProbability());
            json.word("end", possession.end());
            json.wholes("attackers", possession.attackers());
            json.wholes("defenders", possession.defenders());
            json.flag("ballSeen", possession.ballSeen());
            json.text("outcome", possession.outcome());
            json.array("findings", measured.findings(), new FindingFields(json)::write);
            json.object("spacing", () -> new SpacingFields(json).write(measured.spacing()));
            json.array("notSeen", measured.notSeen(), this::notSeen);
            if (measured.script().isPresent()) {
                json.object(
                        "script",
                        () -> new ScriptFields(json).write(measured.script().get()));
            }
        }

        private void notSeen(NotSeen notSeen) throws IOException {
            json.text("what", notSeen.what());
            json.text("why", notSeen.why());
        }
    }
}
