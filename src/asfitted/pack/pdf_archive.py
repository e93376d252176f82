"""What makes a PDF fit to be kept: attachments, metadata, colour profile, a fixed identity.

Built as ISO 19005-3 (PDF/A-3b) asks, as far as that can be told without a validator: fonts are
embedded, colours have an output intent, attachments say what they are. The file does not claim
conformity, because nothing here has validated it.
"""

from __future__ import annotations

import datetime as dt
import hashlib
from dataclasses import dataclass
from typing import TYPE_CHECKING
from xml.sax.saxutils import escape

from pypdf.generic import (
    ArrayObject,
    BooleanObject,
    ByteStringObject,
    DecodedStreamObject,
    DictionaryObject,
    NameObject,
    NumberObject,
    TextStringObject,
)

from asfitted.pack.colour_profile import srgb_profile

if TYPE_CHECKING:
    from collections.abc import Sequence

    from pypdf import PdfWriter

    from asfitted.resolve.installation import Job

PRODUCER = "asfitted"


@dataclass(frozen=True)
class Attachment:
    """A file that travels inside the PDF, byte for byte."""

    name: str
    data: bytes
    description: str
    mime: str = "application/yaml"
    relationship: str = "/Source"  # what the PDF was made from
    holds_prices: bool = False  # kept out of packs that have no prices


def add_archive_parts(
    writer: PdfWriter, job: Job, attachments: Sequence[Attachment], seed: bytes
) -> None:
    """Add metadata, output intent, attachments and a file identity that depends on content only."""
    day = _day(job)
    _metadata(writer, job, day)
    _output_intent(writer)
    for attachment in attachments:
        _attach(writer, attachment, day)
    writer.root_object[NameObject("/Lang")] = TextStringObject("en-GB")
    writer.root_object[NameObject("/ViewerPreferences")] = DictionaryObject(
        {NameObject("/DisplayDocTitle"): BooleanObject(value=True)}
    )
    whole = hashlib.sha256(seed + b"".join(a.data for a in attachments)).digest()[:16]
    identity = ByteStringObject(whole)
    writer._ID = ArrayObject((identity, identity))  # noqa: SLF001 - pypdf offers a random one only
    writer.pdf_header = "%PDF-1.7"


def _day(job: Job) -> dt.datetime | None:
    """Return the date of issue as a moment, None where it is not recorded."""
    try:
        return dt.datetime.fromisoformat(job.date).replace(tzinfo=dt.UTC)
    except ValueError:
        return None


def _facts(job: Job) -> dict[str, str]:
    return {
        "title": f"{job.number} {job.title}",
        "author": job.installer,
        "subject": f"{job.site}: {job.status}, revision {job.revision}, {job.date}",
    }


def _metadata(writer: PdfWriter, job: Job, day: dt.datetime | None) -> None:
    """Write the same facts into the old dictionary and as XMP."""
    facts = _facts(job)
    info = {
        "/Title": facts["title"],
        "/Author": facts["author"],
        "/Subject": facts["subject"],
        "/Creator": PRODUCER,
        "/Producer": PRODUCER,
    }
    if day is not None:
        stamp = day.strftime("D:%Y%m%d%H%M%S+00'00'")
        info |= {"/CreationDate": stamp, "/ModDate": stamp}
    writer.add_metadata(info)
    packet = DecodedStreamObject()
    packet.set_data(_xmp(facts, day))
    packet.update(
        {NameObject("/Type"): NameObject("/Metadata"), NameObject("/Subtype"): NameObject("/XML")}
    )
    writer.root_object[NameObject("/Metadata")] = writer._add_object(packet)  # noqa: SLF001


def _xmp(facts: dict[str, str], day: dt.datetime | None) -> bytes:
    told = {name: escape(words) for name, words in facts.items()}
    dates = ""
    if day is not None:
        moment = day.isoformat()
        dates = (
            f"<xmp:CreateDate>{moment}</xmp:CreateDate><xmp:ModifyDate>{moment}</xmp:ModifyDate>"
        )
    alt = '<rdf:Alt><rdf:li xml:lang="x-default">{}</rdf:li></rdf:Alt>'
    text = (
        '<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>\n'
        '<x:xmpmeta xmlns:x="adobe:ns:meta/">'
        '<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">'
        '<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"'
        ' xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">'
        f"<dc:title>{alt.format(told['title'])}</dc:title>"
        f"<dc:creator><rdf:Seq><rdf:li>{told['author']}</rdf:li></rdf:Seq></dc:creator>"
        f"<dc:description>{alt.format(told['subject'])}</dc:description>"
        f"<xmp:CreatorTool>{PRODUCER}</xmp:CreatorTool>{dates}"
        f"<pdf:Producer>{PRODUCER}</pdf:Producer>"
        "</rdf:Description></rdf:RDF></x:xmpmeta>\n"
        '<?xpacket end="w"?>'
    )
    return text.encode("utf-8")


def _output_intent(writer: PdfWriter) -> None:
    """Say which colours the figures in the pages mean."""
    profile = DecodedStreamObject()
    profile.set_data(srgb_profile())
    profile[NameObject("/N")] = NumberObject(3)
    intent = DictionaryObject(
        {
            NameObject("/Type"): NameObject("/OutputIntent"),
            NameObject("/S"): NameObject("/GTS_PDFA1"),
            NameObject("/OutputConditionIdentifier"): TextStringObject("sRGB IEC61966-2.1"),
            NameObject("/Info"): TextStringObject("sRGB IEC61966-2.1"),
            NameObject("/DestOutputProfile"): writer._add_object(profile.flate_encode()),  # noqa: SLF001
        }
    )
    writer.root_object[NameObject("/OutputIntents")] = ArrayObject(
        [writer._add_object(intent)]  # noqa: SLF001
    )


def _attach(writer: PdfWriter, attachment: Attachment, day: dt.datetime | None) -> None:
    """Embed a file and name it as associated with the whole document."""
    file = writer.add_attachment(attachment.name, attachment.data)
    file.alternative_name = TextStringObject(attachment.name)
    file.description = TextStringObject(attachment.description)
    file.subtype = NameObject("/" + attachment.mime)
    file.size = NumberObject(len(attachment.data))
    file.associated_file_relationship = NameObject(attachment.relationship)
    if day is not None:
        file.modification_date = day
    reference = writer._add_object(file.pdf_object)  # noqa: SLF001
    held = writer.root_object.setdefault(NameObject("/AF"), ArrayObject())
    held.append(reference)
