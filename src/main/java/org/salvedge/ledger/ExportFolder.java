package org.salvedge.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.salvedge.shop.Refused;

/** The folder of an export: made beside its place under another name, then put there whole. */
final class ExportFolder {
    private static final Set<String> OURS = Stream.concat(
                    Stream.of(PackageFiles.DESCRIPTOR), Tables.ALL.stream().map(Table::file))
            .collect(Collectors.toUnmodifiableSet());

    private ExportFolder() {}

    interface Filling {
        long into(Path folder);
    }

    /** @throws Refused if the folder holds anything but an earlier export */
    static long replace(Path folder, Filling filling) {
        try {
            Path place = Files.exists(folder)
                    ? folder.toRealPath()
                    : folder.toAbsolutePath().normalize();
            requireOurs(place);
            Path parent = place.getParent();
            if (parent == null) {
                throw new Refused(folder + " cannot be an export's folder");
            }
            Files.createDirectories(parent);
            Path fresh = Files.createTempDirectory(parent, ".export-");
            try {
                long result = filling.into(fresh);
                put(fresh, place, parent);
                return result;
            } finally {
                delete(fresh);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void put(Path fresh, Path place, Path parent) throws IOException {
        share(fresh, parent);
        if (!Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
            Files.move(fresh, place);
            return;
        }
        Path old = Files.createTempDirectory(parent, ".export-old-");
        Files.delete(old);
        Files.move(place, old);
        Files.move(fresh, place);
        delete(old);
    }

    /** A temporary folder is its owner's alone; an export is as open as the folder it stands in. */
    private static void share(Path fresh, Path parent) throws IOException {
        if (Files.getFileStore(fresh).supportsFileAttributeView("posix")) {
            Files.setPosixFilePermissions(fresh, Files.getPosixFilePermissions(parent));
        }
    }

    private static void requireOurs(Path place) throws IOException {
        if (!Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        if (!Files.isDirectory(place, LinkOption.NOFOLLOW_LINKS)) {
            throw new Refused(place + " is not a folder; name another");
        }
        try (Stream<Path> list = Files.list(place)) {
            List<Path> inside = list.sorted().collect(Collectors.toList());
            boolean hasDescriptor = false;
            for (Path file : inside) {
                String name = String.valueOf(file.getFileName());
                hasDescriptor |= name.equals(PackageFiles.DESCRIPTOR);
                if (!OURS.contains(name) || !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
                    throw new Refused(place + " holds \"" + name
                            + "\", which is no part of an export; name an empty folder or a new one");
                }
            }
            if (!inside.isEmpty() && !hasDescriptor) {
                throw new Refused(place + " holds files, but no export; name an empty folder or a new one");
            }
        }
    }

    private static void delete(Path folder) throws IOException {
        if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        try (Stream<Path> list = Files.list(folder)) {
            for (Path file : list.collect(Collectors.toList())) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }
}
