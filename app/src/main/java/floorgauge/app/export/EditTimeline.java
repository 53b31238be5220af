package floorgauge.app.export;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import floorgauge.app.result.FilmSource;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/**
 * An OpenTimelineIO timeline (Academy Software Foundation, "Serialized data": Timeline.1, Stack.1, Track.1, Clip.2,
 * ExternalReference.1, Marker.2): the findings as clips one after the other, each with a marker on the finding itself and its
 * figures as metadata. Where the film is not at hand its name stands as the reference, for the editor to relink.
 */
final class EditTimeline implements Exporter {

    private static final String MEDIA = "DEFAULT_MEDIA";

    @Override
    public void write(ExportOrder order, ExportFolder folder) {
        folder.write("findings.otio", file -> {
            try (OutputStream out = Files.newOutputStream(file);
                    JsonGenerator json = new JsonFactory().createGenerator(out)) {
                json.setPrettyPrinter(new DefaultPrettyPrinter()
                        .withObjectIndenter(new DefaultIndenter("    ", "\n"))
                        .withArrayIndenter(new DefaultIndenter("    ", "\n")));
                new Writer(json, order).timeline();
                json.writeRaw('\n');
            }
        });
    }

    /**
     * One method an object.
     *
     * @param json where they go
     * @param order what is exported
     */
    private record Writer(JsonGenerator json, ExportOrder order) {

        void timeline() throws IOException {
            begin("Timeline.1", "findings");
            noMetadata();
            json.writeNullField("global_start_time");
            json.writeFieldName("tracks");
            begin("Stack.1", "tracks");
            item();
            json.writeArrayFieldStart("children");
            begin("Track.1", "findings");
            json.writeStringField("kind", "Video");
            item();
            json.writeArrayFieldStart("children");
            for (FilmChoice film : order.films()) {
                Optional<Path> file = order.search().find(film.film().findings().film());
                for (ChosenFinding finding : film.findings()) {
                    clip(film, finding, file);
                }
            }
            json.writeEndArray();
            json.writeEndObject();
            json.writeEndArray();
            json.writeEndObject();
            json.writeEndObject();
        }

        private void clip(FilmChoice film, ChosenFinding finding, Optional<Path> file) throws IOException {
            FrameRate rate = film.film().frameRate();
            Cut cut = order.cut(film, finding);
            begin(
                    "Clip.2",
                    String.format(
                            Locale.ROOT,
                            "%s %03d %s",
                            film.film().name(),
                            finding.number(),
                            finding.finding().kind().words()));
            metadata(film, finding);
            json.writeFieldName("source_range");
            range(rate, cut.fromSeconds(), cut.toSeconds());
            json.writeArrayFieldStart("effects");
            json.writeEndArray();
            json.writeArrayFieldStart("markers");
            marker(rate, finding);
            json.writeEndArray();
            json.writeBooleanField("enabled", true);
            json.writeObjectFieldStart("media_references");
            json.writeFieldName(MEDIA);
            reference(rate, film.film().findings().film(), file);
            json.writeEndObject();
            json.writeStringField("active_media_reference_key", MEDIA);
            json.writeEndObject();
        }

        private void metadata(FilmChoice film, ChosenFinding finding) throws IOException {
            json.writeObjectFieldStart("metadata");
            json.writeObjectFieldStart("floorgauge");
            json.writeStringField("film_sha256", film.film().findings().film().sha256());
            json.writeNumberField("finding", finding.number());
            json.writeNumberField("possession", finding.possession());
            json.writeStringField("kind", finding.finding().kind().words());
            json.writeStringField("label", finding.finding().label());
            json.writeStringField("sentence", finding.finding().sentence());
            json.writeNumberField(
                    "probability", Numbers.rounded(finding.finding().probability()));
            json.writeEndObject();
            json.writeEndObject();
        }

        private void marker(FrameRate rate, ChosenFinding finding) throws IOException {
            begin("Marker.2", finding.finding().kind().words());
            noMetadata();
            json.writeStringField("color", finding.finding().kind().isFlag() ? "RED" : "BLACK");
            json.writeStringField("comment", finding.finding().sentence());
            json.writeFieldName("marked_range");
            range(rate, finding.finding().fromSeconds(), finding.finding().toSeconds());
            json.writeEndObject();
        }

        private void reference(FrameRate rate, FilmSource film, Optional<Path> file) throws IOException {
            begin("ExternalReference.1", film.name());
            noMetadata();
            json.writeFieldName("available_range");
            range(rate, 0, film.durationSeconds());
            json.writeNullField("available_image_bounds");
            json.writeStringField(
                    "target_url",
                    file.map(f -> f.toAbsolutePath().normalize().toUri().toString())
                            .orElseGet(() -> relative(film.name())));
            json.writeEndObject();
        }

        /** A name as a relative reference, with what an address may not hold escaped. */
        private static String relative(String name) {
            try {
                String path = new URI(null, null, "/" + name, null).toASCIIString();
                return path.substring(1);
            } catch (URISyntaxException e) {
                throw new IllegalStateException("any path can be escaped: " + name, e);
            }
        }

        private void range(FrameRate rate, double from, double to) throws IOException {
            long start = rate.frameAt(from);
            json.writeStartObject();
            json.writeStringField("OTIO_SCHEMA", "TimeRange.1");
            json.writeFieldName("start_time");
            time(rate, start);
            json.writeFieldName("duration");
            time(rate, Math.max(1, rate.frameAt(to) - start));
            json.writeEndObject();
        }

        private void time(FrameRate rate, long frames) throws IOException {
            json.writeStartObject();
            json.writeStringField("OTIO_SCHEMA", "RationalTime.1");
            json.writeNumberField("rate", rate.perSecond());
            json.writeNumberField("value", (double) frames);
            json.writeEndObject();
        }

        private void begin(String schema, String name) throws IOException {
            json.writeStartObject();
            json.writeStringField("OTIO_SCHEMA", schema);
            json.writeStringField("name", name);
        }

        private void noMetadata() throws IOException {
            json.writeObjectFieldStart("metadata");
            json.writeEndObject();
        }

        /** What a stack and a track have in common, as all of it. */
        private void item() throws IOException {
            noMetadata();
            json.writeNullField("source_range");
            json.writeArrayFieldStart("effects");
            json.writeEndArray();
            json.writeArrayFieldStart("markers");
            json.writeEndArray();
            json.writeBooleanField("enabled", true);
        }
    }
}
