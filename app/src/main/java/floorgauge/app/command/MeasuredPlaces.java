package floorgauge.app.command;

import floorgauge.app.export.ExportFolder;
import floorgauge.app.export.MeasuredFolder;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** From which results, judged in which season, into which folder: what commands that write something of results share. */
final class MeasuredPlaces {

    @Parameters(
            paramLabel = "RESULTS",
            arity = "1..*",
            description = "Folders that measure wrote: of one film, or of many.")
    private List<Path> results = List.of();

    @Option(
            names = "--out",
            paramLabel = "DIR",
            required = true,
            description = "Folder to write into; made if need be.")
    private Path out;

    @Option(
            names = "--season",
            paramLabel = "DIR",
            defaultValue = "season",
            description = "The season's folder, where the review page keeps verdicts and players (default:"
                    + " ${DEFAULT-VALUE}).")
    private Path season;

    List<MeasuredFolder> measured() {
        return MeasuredFolder.at(results);
    }

    Path season() {
        return season;
    }

    ExportFolder folder() {
        return ExportFolder.open(out);
    }

    /** Names the files that were written, one a line. */
    static void say(List<Path> written, PrintWriter to) {
        written.forEach(file -> to.println("wrote " + FailureReport.oneLine(file.toString())));
    }
}
