package floorgauge.app.command;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version this program was built as. */
public final class BuildVersion implements IVersionProvider {

    private static final String RESOURCE = "/floorgauge/app/build.properties";

    /** The version, such as {@code 0.1.0}. */
    public static String version() {
        Properties properties = new Properties();
        try (InputStream in = BuildVersion.class.getResourceAsStream(RESOURCE)) {
            properties.load(in);
        } catch (IOException e) {
            throw new IllegalStateException("cannot read " + RESOURCE, e);
        }
        return properties.getProperty("version");
    }

    @Override
    public String[] getVersion() {
        return new String[] {"floorgauge " + version()};
    }
}
