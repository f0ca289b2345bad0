package org.fusewright.catalogs.web;

import org.fusewright.catalogs.CatalogContent;
import org.fusewright.catalogs.CatalogImport;
import org.fusewright.catalogs.CatalogRejected;
import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.PartKind;
import org.fusewright.catalogs.StaleCatalog;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.pricing.PriceList;
import org.fusewright.web.Figures;
import org.fusewright.web.Words;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.ModelAndView;

import java.util.List;
import java.util.Optional;

/** The catalog for people: parts by kind, one part with its offers, and the import. */
@Controller
@RequestMapping("/catalog")
class CatalogPages {

    private static final int ROWS_A_PAGE = 100;

    private final Catalogs catalogs;

    CatalogPages(Catalogs catalogs) {
        this.catalogs = catalogs;
    }

    @GetMapping
    String list(
            @RequestParam(defaultValue = "") String kind,
            @RequestParam(defaultValue = "") String q,
            @RequestParam(defaultValue = "") String after,
            Model model) {
        Catalog catalog = catalogs.current();
        PartQuery.Found found = PartQuery.parse(kind, q, after, ROWS_A_PAGE).find(catalogs);
        List<CurrencyUnit> currencies = catalog.listCurrencies();
        model.addAttribute(
                "list",
                new PartListView(
                        catalog.version(),
                        catalogs.countParts(),
                        kind,
                        q,
                        currencies.stream().map(CurrencyUnit::getCode).toList(),
                        found.parts().stream().map(part -> row(part, catalog, currencies)).toList(),
                        found.next().map(PartNumber::value).orElse("")));
        return "catalog/list";
    }

    private static PartListView.Row row(Part part, Catalog catalog, List<CurrencyUnit> currencies) {
        return new PartListView.Row(
                part.number().value(),
                PartKind.of(part).code(),
                part.title(),
                part.brand(),
                currencies.stream()
                        .map(
                                currency ->
                                        PriceList.findUnitPrice(catalog, part.number(), currency)
                                                .map(BigMoney::getAmount)
                                                .map(Figures::exact)
                                                .orElse(""))
                        .toList());
    }

    /** Takes the rest of the path: a part number may hold a slash. */
    @GetMapping("/parts/{*number}")
    String part(@PathVariable String number, Model model) {
        CatalogContent content = catalogs.currentContent();
        Part part = KnownPart.find(content.catalog(), number);
        model.addAttribute("part", part);
        model.addAttribute("kind", PartKind.of(part));
        model.addAttribute("figures", FiguresInWords.of(part));
        model.addAttribute("offers", OfferView.listFor(part.number(), content));
        return "catalog/part";
    }

    @GetMapping("/import")
    ModelAndView importForm() {
        return importPage(HttpStatus.OK, ImportView.empty(versionInForce()));
    }

    @PostMapping("/import")
    ModelAndView importCatalog(
            @RequestParam(defaultValue = "true") boolean dryRun,
            @RequestParam(defaultValue = "") String expectedVersion,
            @RequestParam(name = "files", required = false) @Nullable List<MultipartFile> files) {
        try {
            CatalogContent content = UploadedCatalog.read(files == null ? List.of() : files);
            CatalogImport result =
                    dryRun
                            ? catalogs.tryImport(content)
                            : catalogs.importCatalog(content, Optional.of(expectedVersion));
            return importPage(HttpStatus.OK, ImportView.of(versionInForce(), dryRun, result));
        } catch (CatalogRejected rejected) {
            return importPage(
                    HttpStatus.BAD_REQUEST,
                    ImportView.rejected(versionInForce(), rejected.errors()));
        } catch (StaleCatalog stale) {
            String version = versionInForce();
            return importPage(
                    HttpStatus.PRECONDITION_FAILED,
                    ImportView.stale(version, Words.say("catalog.stale", version)));
        }
    }

    private String versionInForce() {
        return catalogs.current().version();
    }

    private static ModelAndView importPage(HttpStatus status, ImportView view) {
        ModelAndView page = new ModelAndView("catalog/import", status);
        page.addObject("view", view);
        return page;
    }
}
