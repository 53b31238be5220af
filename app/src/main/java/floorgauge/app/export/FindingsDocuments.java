package floorgauge.app.export;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import floorgauge.app.result.FilmSource;
import floorgauge.app.result.FindingText;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;

/**
 * The findings of many films in one JSON file; its schema is {@code export.schema.json} beside this class, in which a finding
 * is what it is in {@code findings.json}.
 */
final class FindingsDocuments implements Exporter {

    static final String FORMAT = "floorgauge-export";
    static final int VERSION = 1;

    @Override
    public void write(ExportOrder order, ExportFolder folder) {
        folder.write("findings.json", file -> {
            try (OutputStream out = Files.newOutputStream(file);
                    JsonGenerator json = new JsonFactory().createGenerator(out)) {
                json.writeStartObject();
                json.writeStringField("format", FORMAT);
                json.writeNumberField("version", VERSION);
                json.writeArrayFieldStart("films");
                for (FilmChoice film : order.films()) {
                    json.writeRaw('\n');
                    write(json, film);
                }
                json.writeEndArray();
                json.writeEndObject();
                json.writeRaw('\n');
            }
        });
    }

    private static void write(JsonGenerator json, FilmChoice choice) throws IOException {
        FilmSource film = choice.film().findings().film();
        json.writeStartObject();
        json.writeStringField("name", film.name());
        json.writeStringField("sha256", film.sha256());
        json.writeStringField("rules", choice.film().findings().court().rules().name());
        json.writeNumberField("durationSeconds", Numbers.rounded(film.durationSeconds()));
        json.writeNumberField("frames", film.frames());
        json.writeArrayFieldStart("findings");
        for (ChosenFinding finding : choice.findings()) {
            json.writeRaw('\n');
            json.writeStartObject();
            json.writeNumberField("number", finding.number());
            json.writeNumberField("possession", finding.possession());
            json.writeFieldName("finding");
            json.writeRawValue(FindingText.write(finding.finding()));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
