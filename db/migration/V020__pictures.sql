create table picture (
    id uuid constraint picture_key primary key,
    file_name text not null,
    format text not null constraint picture_format check (format in ('JPEG', 'PNG', 'TIFF', 'WEBP', 'PDF')),
    width_px integer not null constraint picture_width check (width_px > 0),
    height_px integer not null constraint picture_height check (height_px > 0),
    orientation smallint not null constraint picture_orientation check (orientation between 1 and 8),
    sha256 text not null constraint picture_sha256 check (sha256 ~ '^[0-9a-f]{64}$'),
    byte_count bigint not null constraint picture_bytes check (byte_count > 0),
    colour_model text not null constraint picture_colours check (colour_model in ('GREY', 'RGB', 'CMYK')),
    colour_bits smallint not null,
    has_alpha boolean not null,
    profile text,
    detail_share double precision,
    dark_share double precision,
    median_light double precision,
    contrast double precision,
    received_at timestamptz not null
);
comment on table picture is 'Pictures as they were taken in; rows never change. Width and height are those of the upright picture.';
create index picture_by_content on picture (sha256);

create table picture_original (
    picture_id uuid constraint picture_original_key primary key
        constraint picture_original_of references picture,
    content bytea not null
);
-- Not compressed again, so that slices of it can be read cheaply.
alter table picture_original alter column content set storage external;
comment on table picture_original is 'The file of a picture, byte for byte as sent.';

create table picture_rendition (
    picture_id uuid not null constraint picture_rendition_of references picture,
    px integer not null constraint picture_rendition_size check (px > 0),
    width_px integer not null,
    height_px integer not null,
    jpeg bytea not null,
    constraint picture_rendition_key primary key (picture_id, px)
);
alter table picture_rendition alter column jpeg set storage external;
comment on table picture_rendition is 'Smaller copies for screens: upright, sRGB, without metadata.';

create table picture_notice (
    picture_id uuid not null constraint picture_notice_of references picture,
    position smallint not null,
    text_key text not null,
    arguments text[] not null,
    constraint picture_notice_key primary key (picture_id, position)
);
comment on table picture_notice is 'What the sender should know about a picture, as keys of texts.';
