package floorgauge.app.command;

import floorgauge.app.batch.BatchReport;
import java.io.PrintWriter;
import java.nio.file.Path;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** Prints a line a film, and on a terminal a bar with the time left. */
final class TerminalReport implements BatchReport {

    private static final int BAR_WIDTH = 100;
    private static final int REDRAW_MILLISECONDS = 500;

    private final PrintWriter out;
    private final PrintWriter err;
    private final boolean terminal;
    private ProgressBar bar;
    private int films;

    /** @param terminal whether someone watches; without, no bar is drawn */
    TerminalReport(PrintWriter out, PrintWriter err, boolean terminal) {
        this.out = out;
        this.err = err;
        this.terminal = terminal;
    }

    @Override
    public void begin(int newFilms, double filmSeconds) {
        films = newFilms;
        if (terminal && newFilms > 0) {
            bar = new ProgressBarBuilder()
                    .setTaskName("measuring")
                    .setInitialMax(filmSeconds > 0 ? (long) Math.ceil(filmSeconds) : -1)
                    .setStyle(ProgressBarStyle.ASCII)
                    .setUnit(" s of film", 1)
                    .setUpdateIntervalMillis(REDRAW_MILLISECONDS)
                    .setConsumer(new ConsoleProgressBarConsumer(System.err, BAR_WIDTH))
                    .build();
        }
    }

    @Override
    public void film(int number, Path film) {
        if (bar != null) {
            bar.setExtraMessage(number + " of " + films);
        }
    }

    @Override
    public void reached(double filmSeconds) {
        if (bar != null) {
            bar.stepTo((long) filmSeconds);
        }
    }

    @Override
    public void warned(Path film, String line) {
        print(err, "floorgauge: " + FailureReport.oneLine(line));
    }

    @Override
    public void measured(Path film, Path results) {
        print(out, "measured " + FailureReport.oneLine(film + ": " + results.resolve("sheet.html")));
    }

    @Override
    public void doneBefore(Path film, Path results) {
        print(out, "done before " + FailureReport.oneLine(film + ": " + results.resolve("sheet.html")));
    }

    @Override
    public void failed(Path film, String line) {
        print(err, "floorgauge: " + FailureReport.oneLine(line));
    }

    @Override
    public void broke(Path film, RuntimeException bug) {
        print(err, "floorgauge: " + FailureReport.oneLine(film + ": this is a bug in floorgauge; please report it"));
        bug.printStackTrace(err);
        err.flush();
    }

    @Override
    public void close() {
        if (bar != null) {
            bar.close();
        }
    }

    private void print(PrintWriter to, String line) {
        if (bar != null) {
            // Clears what is left of the bar on the line; the bar draws itself again below.
            to.print("\r\u001b[K");
        }
        to.println(line);
        to.flush();
    }
}
