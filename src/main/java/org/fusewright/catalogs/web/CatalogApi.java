package org.fusewright.catalogs.web;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.CatalogImport;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.PartKind;
import org.fusewright.catalogs.Supplier;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.web.Problems;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartFile;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** The catalog for programs. Its version is the ETag of every answer. */
@RestController
@RequestMapping("/api/catalog")
class CatalogApi {

    private static final Pattern ENTITY_TAG = Pattern.compile("\"([^\"]*)\"");

    private final Catalogs catalogs;

    CatalogApi(Catalogs catalogs) {
        this.catalogs = catalogs;
    }

    record Overview(
            String version, Map<String, Integer> counts, int offers, List<Supplier> suppliers) {}

    @GetMapping
    ResponseEntity<Overview> show() {
        CatalogContent content = catalogs.currentContent();
        String version = content.catalog().version();
        return ResponseEntity.ok()
                .eTag(version)
                .body(
                        new Overview(
                                version,
                                byCode(catalogs.countParts()),
                                content.catalog().listOffers().size(),
                                content.suppliers()));
    }

    record PartLine(String part, String kind, String title, String brand, double massG) {

        static PartLine of(Part part) {
            return new PartLine(
                    part.number().value(),
                    PartKind.of(part).code(),
                    part.title(),
                    part.brand(),
                    part.massG());
        }
    }

    /**
     * @param next give it as {@code after} to get the next page; null on the last one
     */
    record PartPage(List<PartLine> parts, @Nullable String next) {}

    @GetMapping("/parts")
    PartPage listParts(
            @RequestParam(required = false) @Nullable String kind,
            @RequestParam(required = false) @Nullable String q,
            @RequestParam(required = false) @Nullable String after,
            @RequestParam(defaultValue = "50") int limit) {
        PartQuery.Found found = PartQuery.parse(kind, q, after, limit).find(catalogs);
        return new PartPage(
                found.parts().stream().map(PartLine::of).toList(),
                found.next().map(PartNumber::value).orElse(null));
    }

    record PartDetail(
            String part,
            String kind,
            String title,
            String brand,
            double massG,
            Map<String, @Nullable Object> figures,
            List<OfferView> offers) {}

    /** Takes the rest of the path: a part number may hold a slash. */
    @GetMapping("/parts/{*number}")
    ResponseEntity<PartDetail> showPart(@PathVariable String number) {
        CatalogContent content = catalogs.currentContent();
        Part part = KnownPart.find(content.catalog(), number);
        PartLine line = PartLine.of(part);
        return ResponseEntity.ok()
                .eTag(content.catalog().version())
                .body(
                        new PartDetail(
                                line.part(),
                                line.kind(),
                                line.title(),
                                line.brand(),
                                line.massG(),
                                PartFigures.of(part),
                                OfferView.listFor(part.number(), content)));
    }

    record ImportResult(
            boolean dryRun,
            String version,
            @Nullable String previousVersion,
            Map<String, Integer> counts,
            int offers,
            List<String> added,
            List<String> changed,
            List<String> removed,
            List<String> repriced) {

        static ImportResult of(boolean dryRun, CatalogImport result) {
            return new ImportResult(
                    dryRun,
                    result.version(),
                    result.previousVersion().orElse(null),
                    byCode(result.counts()),
                    result.offers(),
                    numbers(result.added()),
                    numbers(result.changed()),
                    numbers(result.removed()),
                    numbers(result.repriced()));
        }

        private static List<String> numbers(List<PartNumber> parts) {
            return parts.stream().map(PartNumber::value).toList();
        }
    }

    /** Imports all files or nothing; an import in earnest names the version that it replaces. */
    @PostMapping(value = "/import", consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
    ResponseEntity<ImportResult> importCatalog(
            @RequestParam(defaultValue = "false") boolean dryRun,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestParam(name = "files", required = false) @Nullable List<MultipartFile> files) {
        if (!dryRun && ifMatch == null) {
            throw Problems.exception(
                    Problems.of(
                            HttpStatus.PRECONDITION_REQUIRED,
                            "Give the version of the catalog that is to be replaced in If-Match,"
                                    + " or try the import with dryRun=true."));
        }
        CatalogContent content = UploadedCatalog.read(files == null ? List.of() : files);
        if (dryRun || ifMatch == null) {
            return ResponseEntity.ok(ImportResult.of(true, catalogs.tryImport(content)));
        }
        CatalogImport result = catalogs.importCatalog(content, Optional.of(expected(ifMatch)));
        return ResponseEntity.ok().eTag(result.version()).body(ImportResult.of(false, result));
    }

    /** The version in force when the header's tags hold it (RFC 9110, 13.1.1). */
    private String expected(String ifMatch) {
        String inForce = catalogs.current().version();
        boolean holds =
                ifMatch.strip().equals("*")
                        || ENTITY_TAG
                                .matcher(ifMatch)
                                .results()
                                .map((MatchResult tag) -> tag.group(1))
                                .anyMatch(inForce::equals);
        return holds ? inForce : ifMatch;
    }

    private static Map<String, Integer> byCode(Map<PartKind, Integer> counts) {
        Map<String, Integer> byCode = new LinkedHashMap<>();
        counts.forEach((kind, count) -> byCode.put(kind.code(), count));
        return byCode;
    }
}
